// Shows the picture that the extension sends, and tells it which shape was chosen.
interface Editor {
  postMessage(message: object): void;
  setState(state: object): void;
}
declare function acquireVsCodeApi(): Editor;

type Message =
  | { kind: 'picture'; svg: string; ids: string[] }
  | { kind: 'same' }
  | { kind: 'light'; ids: string[] }
  | { kind: 'none'; said: string };

const editor = acquireVsCodeApi();
const said = document.getElementById('said') as HTMLElement;
const holder = document.getElementById('picture') as HTMLElement;
// The picture's own style sheet stays in here and does not reach the page.
const root = holder.attachShadow({ mode: 'open' });
const marks = new CSSStyleSheet();
marks.replaceSync(`
  [data-goes] { cursor: pointer; }
  [data-goes]:hover, [data-goes]:focus-visible { filter: drop-shadow(0 0 2px #0a58ca); outline: none; }
  [data-here] :is(path, circle, rect, line, polyline, polygon) { stroke: #c2410c; }
  [data-here] :is(path, circle, rect, line, polyline, polygon):not([marker-start], [marker-end]) { stroke-width: 3; }
`);

window.addEventListener('message', (event: MessageEvent<Message>) => {
  const message = event.data;
  if (message.kind === 'picture') {
    draw(message.svg, new Set(message.ids));
  } else if (message.kind === 'light') {
    light(new Set(message.ids));
  }
  const none = message.kind === 'none';
  if (message.kind !== 'light') {
    said.textContent = none ? message.said : '';
    said.hidden = !none;
    // An older picture stays in view, so that the page does not jump while a line is half typed.
    holder.classList.toggle('old', none);
  }
});

function draw(svg: string, ids: Set<string>): void {
  // Styles are set by script below: as attributes the policy of the page refuses them.
  const parsed = new DOMParser().parseFromString(svg.replaceAll(' style="', ' data-style="'), 'image/svg+xml');
  const drawing = parsed.documentElement;
  if (drawing.localName !== 'svg') {
    return;
  }
  clean(drawing);
  const styles = [...drawing.querySelectorAll('style')].map(style => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(style.textContent ?? '');
    style.remove();
    return sheet;
  });
  const left = scrollX;
  const top = scrollY;
  root.replaceChildren(document.importNode(drawing, true));
  root.adoptedStyleSheets = [...styles, marks];
  for (const shape of root.querySelectorAll<SVGElement>('[data-style]')) {
    shape.style.cssText = shape.getAttribute('data-style') ?? '';
  }
  for (const id of ids) {
    const first = root.getElementById(id);
    const line = first?.getAttribute('data-line');
    if (first && line) {
      first.setAttribute('tabindex', '0');
      // The first shape of a line in a view has the id, all of them the line.
      for (const shape of root.querySelectorAll(`[data-line="${CSS.escape(line)}"]`)) {
        shape.setAttribute('data-goes', id);
      }
    }
  }
  window.scrollTo(left, top);
}

/** Nothing that runs, whatever the server sends; the page's policy would refuse it as well. */
function clean(drawing: Element): void {
  for (const element of drawing.querySelectorAll('script, foreignObject, iframe, object, embed, a, animate, set')) {
    element.remove();
  }
  for (const element of [drawing, ...drawing.querySelectorAll('*')]) {
    for (const { name, value } of [...element.attributes]) {
      const outside = /^(xlink:)?href$/i.test(name) && !value.startsWith('#');
      if (/^on/i.test(name) || outside) {
        element.removeAttribute(name);
      }
    }
  }
}

function light(ids: Set<string>): void {
  for (const shape of root.querySelectorAll('[data-goes]')) {
    shape.toggleAttribute('data-here', ids.has(shape.getAttribute('data-goes') ?? ''));
  }
}

function choose(event: Event): void {
  const shape = event.composedPath().find(node => node instanceof Element && node.hasAttribute('data-goes'));
  if (shape) {
    editor.postMessage({ kind: 'go', id: (shape as Element).getAttribute('data-goes') });
  }
}

root.addEventListener('click', choose);
root.addEventListener('keydown', event => {
  if ((event as KeyboardEvent).key === 'Enter') {
    choose(event);
  }
});
editor.setState({});
editor.postMessage({ kind: 'ready' });
export {};
