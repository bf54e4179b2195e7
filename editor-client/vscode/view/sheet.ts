// Shows the sheet that the extension sends in a frame that runs nothing, where it was scrolled to.
declare function acquireVsCodeApi(): { postMessage(message: object): void };

type Message = { kind: 'sheet'; html: string } | { kind: 'none'; said: string };

const said = document.getElementById('said') as HTMLElement;
const frame = document.getElementById('sheet') as HTMLIFrameElement;

window.addEventListener('message', (event: MessageEvent<Message>) => {
  const message = event.data;
  said.hidden = message.kind === 'sheet';
  if (message.kind === 'none') {
    said.textContent = message.said;
    return;
  }
  const top = frame.contentWindow?.scrollY ?? 0;
  frame.onload = () => frame.contentWindow?.scrollTo(0, top);
  frame.srcdoc = message.html;
  frame.hidden = false;
});

acquireVsCodeApi().postMessage({ kind: 'ready' });
export {};
