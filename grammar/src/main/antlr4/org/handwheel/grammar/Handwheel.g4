// The plan language and the shop language: one grammar serves both kinds of file.
//
// Rules that hold throughout, each proved by a test:
//  * A newline ends a statement; only `\` at the end of a line joins it to the next.  The first word
//    decides what a line is, and a section runs from its header to the next header, so a broken line
//    never takes a neighbour with it.
//  * Every token reaches the tree: blanks and comments go to the hidden channel, a character that
//    means nothing becomes an ERROR token, and a line that is no statement is an `unknownLine`.
//  * The first words of headers start nothing else.  The other words are contextual (`soft`): they
//    may also be names.  Only headers, `language`, faces, places, axes, units and `at by to in with
//    most` are reserved.
//  * No clause ends in an optional operand that another clause could start with, and no clause puts a
//    number before the preposition `in`: the grammar is decided without ambiguity.
grammar Handwheel;
options { caseInsensitive = true; }

file : content? (NL content?)* EOF ;
content : header | statement | unknownLine ;

// ---- Section headers ------------------------------------------------------------------------------

header
  : PLAN title? (REV revision)?                                        #planHeader
  | SHOP title?                                                        #shopHeader
  | PART name?                                                         #partHeader
  | STOCK name?                                                        #stockHeader
  | SETUP name? title?                                                 #setupHeader
  | OWN ownKind name title?                                            #ownHeader
  | LOG title?                                                         #logHeader
  | INSPECT                                                            #inspectHeader
  ;

title : STRING ;
revision : INT | DEC | name ;
ownKind
  : MACHINE | VISE | PARALLELS | CUTTER | DRILL | DRILLS | TAP | REAMER | INSTRUMENT | MATERIAL | PACKING
  | SPACER | CLAMP | BAR | FINDER | ANGLE_PLATE | V_BLOCK | SUBPLATE | LIMITS | SEVERITIES
  ;

// ---- Statements: the first word decides ------------------------------------------------------------

statement
  // any section
  : LANGUAGE wholeNumber                                               #languageLine
  | UNITS lengthUnit                                                   #unitsLine
  | USE path                                                           #useLine
  | LET name EQ expr                                                   #letLine
  | NOTE text                                                          #noteLine
  // part and stock
  | MATERIAL materialRef                                               #materialLine
  | MACHINE machineRef                                                 #machineLine
  | dimension nominal sizeTolerance?                                   #dimensionLine
  | DATUM datumFace (COMMA? datumFace)*                                #datumLine
  | SQUARE ALL lengthValue                                             #squareAllLine
  | kind=(SQUARE | PARALLEL) faceOrDatum TO faceOrDatum lengthValue    #relationLine
  | FLAT faceOrDatum lengthValue                                       #flatLine
  | TOLERANCE standardTolerance                                        #generalToleranceLine
  | TOLERANCE placesTolerance (COMMA? placesTolerance)*                #placesToleranceLine
  | SURFACE (ALL | faces) RA roughness                                 #surfaceLine
  | BREAK EDGES lengthValue                                            #breakLine
  | HOLE name IN face (COMMA? holeClause)*                             #holeLine
  | PATTERN name OF holeRef (COMMA? patternClause)*                    #patternLine
  | SIZE lengthValue X lengthValue X lengthValue                       #sizeLine
  | skin=(SAWN | ROLLED | CAST | DRAWN | MILLED | GROUND) (ALL | faces) #skinLine
  | KERF lengthValue                                                   #kerfLine
  | WANDER lengthValue                                                 #wanderLine
  | MAKE wholeNumber                                                   #makeLine
  // setup: holding
  | HOLD IN viseRef (COMMA? holdClause)*                               #holdInViseLine
  | HOLD ON rest (COMMA? holdClause)*                                  #holdOnLine
  | SEAT seatClause (COMMA? seatClause)*                               #seatLine
  | TRUE viseRef WITH instrumentRef (COMMA? errorOver)?                #trueLine
  | TRAM HEAD errorOver                                                #tramLine
  // setup: tool, zero and locks
  | CUTTER cutterRef (COMMA? toolClause)*                              #cutterLine
  | TOUCH face (WITH touchWith)? (COMMA? zeroClause)?                  #touchLine
  | FIND findTarget (FROM place)? (WITH FINDER finderRef | WITH instrumentRef)? (COMMA? zeroClause)?  #findLine
  | zeroClause                                                         #zeroLine
  | SET axis lengthValue BELOW face                                    #setLine
  | LOCK axis (COMMA? axis)*                                           #lockLine
  | UNLOCK axis (COMMA? axis)*                                         #unlockLine
  | MOVE HEAD (UP | DOWN) lengthValue                                  #moveHeadLine
  // setup: cutting
  | CLEAN face (COMMA? cutClause)*                                     #cleanLine
  | ROUGH face TO sizeTarget (COMMA? cutClause)*                       #roughLine
  | FINISH face TO sizeTarget (COMMA? cutClause)*                      #finishLine
  | verb=(SPOT | DRILL | REAM | TAP | BORE | COUNTERBORE | COUNTERSINK) holeRef (COMMA? furtherHoleRef)*
      (COMMA? drillSize (THEN drillSize)*)? (COMMA? holeCutClause)*    #holeCutLine
  // in `part` these describe a feature, in `setup` they cut it
  | verb=(SLOT | POCKET | PROFILE | STEP | CHAMFER | OUTLINE | WINDOW | CORNER) featureTarget
      (COMMA? featureClause)*                                          #featureLine
  // setup: handling and measuring
  | DEBURR deburrTarget                                                #deburrLine
  | WIPE wipeTarget (COMMA? wipeTarget)*                               #wipeLine
  | MEASURE dimension WITH instrumentRef                               #measureLine
  // log and inspection
  | IN setupRef COLON READ dimension quantity+ WITH instrumentRef      #readLine
  | IN setupRef COLON NOTE text                                        #logNoteLine
  | CHECK kind=(SQUARE | PARALLEL) faceOrDatum TO faceOrDatum WITH instrumentRef  #checkRelationLine
  | CHECK FLAT faceOrDatum WITH instrumentRef                          #checkFlatLine
  | CHECK checkRef (COMMA checkRef)* WITH instrumentRef                #checkLine
  // shop: one shape for every property; names and types come from a table, not from the grammar
  | property COLON value (COMMA value)*                                #propertyLine
  ;

// A line whose first word starts no statement; the suggestion of a near word comes from here.
unknownLine
  : (ID | clauseWord) (~(NL | COLON) ~NL*)?
  | ~( NL | COLON | ID
     | PLAN | SHOP | PART | STOCK | SETUP | OWN | LOG | INSPECT | LANGUAGE
     | UNITS | USE | LET | NOTE | MATERIAL | MACHINE | LENGTH | WIDTH | HEIGHT | DATUM | SQUARE | PARALLEL | FLAT
     | TOLERANCE | SURFACE | BREAK | HOLE | PATTERN | SIZE | SAWN | ROLLED | CAST | DRAWN | MILLED | GROUND | KERF
     | WANDER | MAKE | HOLD | SEAT | TRUE | TRAM | CUTTER | TOUCH | FIND | ZERO | SET | LOCK | UNLOCK | MOVE | CLEAN
     | ROUGH | FINISH | SPOT | DRILL | REAM | TAP | BORE | COUNTERBORE | COUNTERSINK | SLOT | POCKET | PROFILE | STEP
     | CHAMFER | OUTLINE | WINDOW | CORNER | DEBURR | WIPE | MEASURE | CHECK | IN
     | VISE | PARALLELS | DRILLS | REAMER | INSTRUMENT | PACKING | SPACER | CLAMP | BAR | FINDER | ANGLE_PLATE | V_BLOCK
     | SUBPLATE | LIMITS | SEVERITIES | REV | ALL | RA | EDGES | OF | DIA | FROM | DEPTH | THROUGH
     | THREAD | SPOTFACE | RADIUS | CIRCLE | ROW | GRID | COUNT | FIRST | ABOUT | UP | DOWN | FIXED | ON | PAIR | ONE
     | BED | TABLE | SOFT_STRIP | MID_GRIP | BESIDE | OVERHANG | STOP | TAPPED | BOTH | TIGHT | GRIP | LIGHT | UPRIGHT
     | OVER | HEAD | PAPER | BELOW | EDGE | CENTRE | LEAVING | PASS | PASSES | CONVENTIONAL | CLIMB | TRAVEL | OFFSET
     | TOWARD | SPEED | FEED | REPEAT | THEN | HAND | GUIDE | SPINDLE | PECK | SEEN | ELLIPSE | OBROUND | CUSP | JAWS
     | READ | MIRRORED | BLEND | TANGENT | BOSS | ARC | HOLLOW ) ~NL*
  | COLON ~NL*
  ;

// ---- Clauses ------------------------------------------------------------------------------------------

datumFace : name face ;

holeClause
  : DIA nominal (fit | sizeTolerance)?                                 #holeDia
  | thread                                                             #holeThread
  | AT point (FROM corner)?                                            #holeAt
  | THROUGH                                                            #holeThrough
  | DEPTH lengthValue                                                  #holeDepth
  | THREAD lengthValue                                                 #holeThreadDepth
  | DRILL lengthValue                                                  #holeDrillDepth
  | SPOTFACE DIA lengthValue                                           #holeSpotface
  | COUNTERBORE DIA lengthValue DEPTH lengthValue                      #holeCounterbore
  | COUNTERSINK DIA lengthValue                                        #holeCountersink
  ;

patternClause
  : CIRCLE DIA nominal                                                 #patternCircle
  | ROW                                                                #patternRow
  | GRID wholeNumber X wholeNumber                                     #patternGrid
  | COUNT wholeNumber                                                  #patternCount
  | FIRST AT angleValue                                                #patternFirst
  | ABOUT point (FROM corner)?                                         #patternAbout
  | AT point (FROM corner)?                                            #patternAt
  | BY point                                                           #patternBy
  | MIRRORED face TO face                                              #patternMirrored
  | MIRRORED ABOUT point TO point (FROM corner)?                       #patternMirroredAbout
  ;

holdClause
  : UP face                                                            #holdUp
  | FIXED face                                                         #holdFixed
  | ON PAIR parallelsRef                                               #holdOnPair
  | ON ONE parallelsRef                                                #holdOnOne
  | ON BED                                                             #holdOnBed
  | ON SOFT_STRIP lengthValue                                          #holdOnSoftStrip
  | BAR lengthValue (AT barHeight)?                                    #holdBar
  | BESIDE packingRef                                                  #holdBeside
  | SPACER lengthValue AT place                                        #holdSpacer
  | OVERHANG side lengthValue                                          #holdOverhang
  | AT place                                                           #holdAt
  | STOP AT place                                                      #holdStop
  | CLAMP clampRef AT point                                            #holdClamp
  ;
rest : TABLE | ANGLE_PLATE name | V_BLOCK name | SUBPLATE name ;
barHeight : MID_GRIP | quantity | LP expr RP ;

seatClause
  : TAPPED                                                             #seatTapped
  | BOTH PARALLELS TIGHT                                               #seatTight
  | GRIP LIGHT                                                         #seatLight
  | UPRIGHT ON face WITH instrumentRef                                 #seatUpright
  ;

toolClause
  : SPEED speedValue                                                   #toolSpeed
  | FEED feedValue                                                     #toolFeed
  ;

touchWith : PAPER lengthValue | instrumentRef ;
findTarget : face | CENTRE OF holeRef ;
zeroClause : ZERO axis (COMMA? axis)* (AT zeroAt)? ;
zeroAt : EDGE | TOUCH | CENTRE | face ;

cutClause
  : AT lengthValue                                                     #cutAt
  | AT MOST lengthValue                                                #cutAtMost
  | LEAVING lengthValue                                                #cutLeaving
  | PASS lengthValue                                                   #cutPass
  | BY wholeNumber PASSES OF lengthValue                               #cutPasses
  | ONE PASS                                                           #cutOnePass
  | CONVENTIONAL                                                       #cutConventional
  | CLIMB                                                              #cutClimb
  | TRAVEL side TO side                                                #cutTravel
  | OFFSET lengthValue TOWARD side                                     #cutOffset
  | STEP OVER lengthValue                                              #cutStepOver
  | SPEED speedValue                                                   #cutSpeed
  | FEED feedValue                                                     #cutFeed
  | REPEAT                                                             #cutRepeat
  ;

drillSize : quantity | NUMBER_DRILL | LETTER_DRILL ;
holeCutClause
  : WITH toolRef                                                       #holeCutWith
  | BY HAND                                                            #holeCutByHand
  | GUIDE IN SPINDLE                                                   #holeCutGuide
  | DEPTH lengthValue                                                  #holeCutDepth
  | PECK lengthValue                                                   #holeCutPeck
  | SPEED speedValue                                                   #holeCutSpeed
  | FEED feedValue                                                     #holeCutFeed
  ;

featureTarget : face | name ;
featureClause
  : IN face                                                            #featureIn
  | SEEN FROM face                                                     #featureSeenFrom
  | AT point (FROM corner)?                                            #featureAt
  | WIDTH nominal sizeTolerance?                                       #featureWidth
  | LENGTH nominal sizeTolerance?                                      #featureLength
  | DEPTH lengthValue                                                  #featureDepth
  | THROUGH                                                            #featureThrough
  | SIZE lengthValue X lengthValue                                     #featureSize
  | RADIUS lengthValue                                                 #featureRadius
  | ELLIPSE lengthValue X lengthValue                                  #featureEllipse
  | OBROUND lengthValue X lengthValue                                  #featureObround
  | CIRCLE DIA nominal sizeTolerance?                                  #featureCircle
  | CORNER point (BLEND lengthValue | TANGENT)?                        #featureCorner
  | BOSS point RADIUS lengthValue                                      #featureBoss
  | ARC RADIUS lengthValue                                             #featureArc
  | HOLLOW RADIUS lengthValue                                          #featureHollow
  | TOLERANCE plusMinus                                                #featureTolerance
  | WITH cutterRef                                                     #featureWith
  | LEAVING lengthValue                                                #featureLeaving
  | PASS lengthValue                                                   #featurePass
  | CUSP lengthValue                                                   #featureCusp
  | CONVENTIONAL                                                       #featureConventional
  | CLIMB                                                              #featureClimb
  | SPEED speedValue                                                   #featureSpeed
  | FEED feedValue                                                     #featureFeed
  ;

deburrTarget : ALL EDGES | EDGES OF faces | faces | furtherHoleRef (COMMA? furtherHoleRef)* ;
wipeTarget : face | JAWS | PARALLELS | TABLE ;

// ---- Places, faces and names --------------------------------------------------------------------------

faces : face (COMMA? face)* ;
face : LEFT | RIGHT | FRONT | BACK | TOP | BOTTOM ;
faceOrDatum : face | name ;
place : operatorPlace | CENTRE ;
operatorPlace : OPERATOR_LEFT | OPERATOR_RIGHT | OPERATOR_FRONT | OPERATOR_BACK ;
side : face | place ;
axis : X | Y | Z ;
corner : CENTRE | face face ;
dimension : LENGTH | WIDTH | HEIGHT ;
point : LP expr COMMA expr RP ;

viseRef : name ;
parallelsRef : name ;
packingRef : name ;
clampRef : name ;
cutterRef : name ;
toolRef : name ;
instrumentRef : name ;
finderRef : name ;
machineRef : name ;
materialRef : name ;
holeRef : name ;
furtherHoleRef : ID | startWord ;   // not a clause word: `drill a, depth 5` is a clause
checkRef : dimension | ID | verbWord | clauseWord ;
setupRef : name ;

name : ID | soft ;
soft : startWord | clauseWord ;
startWord : dimension | verbWord ;
verbWord
  : UNITS | USE | LET | NOTE | MATERIAL | MACHINE | DATUM | SQUARE | PARALLEL | FLAT
  | TOLERANCE | SURFACE | BREAK | HOLE | PATTERN | SIZE | SAWN | ROLLED | CAST | DRAWN | MILLED | GROUND | KERF
  | WANDER | MAKE | HOLD | SEAT | TRUE | TRAM | CUTTER | TOUCH | FIND | ZERO | SET | LOCK | UNLOCK | MOVE | CLEAN
  | ROUGH | FINISH | SPOT | DRILL | REAM | TAP | BORE | COUNTERBORE | COUNTERSINK | SLOT | POCKET | PROFILE | STEP
  | CHAMFER | OUTLINE | WINDOW | CORNER | DEBURR | WIPE | MEASURE | CHECK
  ;
clauseWord
  : VISE | PARALLELS | DRILLS | REAMER | INSTRUMENT | PACKING | SPACER | CLAMP | BAR | FINDER | ANGLE_PLATE | V_BLOCK
  | SUBPLATE | LIMITS | SEVERITIES | REV | ALL | RA | EDGES | OF | DIA | FROM | DEPTH | THROUGH
  | THREAD | SPOTFACE | RADIUS | CIRCLE | ROW | GRID | COUNT | FIRST | ABOUT | UP | DOWN | FIXED | ON | PAIR | ONE
  | BED | TABLE | SOFT_STRIP | MID_GRIP | BESIDE | OVERHANG | STOP | TAPPED | BOTH | TIGHT | GRIP | LIGHT | UPRIGHT
  | OVER | HEAD | PAPER | BELOW | EDGE | CENTRE | LEAVING | PASS | PASSES | CONVENTIONAL | CLIMB | TRAVEL | OFFSET
  | TOWARD | SPEED | FEED | REPEAT | THEN | HAND | GUIDE | SPINDLE | PECK | SEEN | ELLIPSE | OBROUND | CUSP | JAWS
  | READ | MIRRORED | BLEND | TANGENT | BOSS | ARC | HOLLOW
  ;

// ---- Values ----------------------------------------------------------------------------------------------

// A size that a tolerance may follow is a number, a name or a parenthesised sum, never an open sum:
// otherwise `16 +0/-0.03` would be read as the sum 16 + 0/(-0.03) and the tolerance silently lost.
nominal : quantity | name | LP expr RP ;
sizeTolerance
  : plusMinus                                                          #symmetricTolerance
  | signed SLASH signed                                                #pairTolerance
  | SLASH quantity                                                     #limitTolerance
  ;
plusMinus : PM quantity ;
signed : (PLUS | MINUS) quantity ;
fit : ID ;
thread : THREAD_M | THREAD_NAMED ;
standardTolerance : name wholeNumber name ;
placesTolerance : number plusMinus ;   // the number stands for all that are written like it: 0.00 +-0.05

lengthValue : expr ;
sizeTarget : expr ;
angleValue : expr ;
speedValue : expr ;
feedValue : expr ;
roughness : expr ;
wholeNumber : INT ;
errorOver : lengthValue OVER lengthValue ;
text : STRING ;
path : STRING ;

property : name ;
value : expr (OVER expr)? | STRING | face | operatorPlace | axis ;

expr : MINUS? term ((PLUS | MINUS) term)* ;
term : factor (STAR factor | SLASH divisor)* ;
factor : quantity | name | LP expr RP ;
divisor : INT | DEC | name | LP expr RP ;   // never a FRACTION: x/6/2 would mean x/(6/2)
quantity : number unit? ;
number : INT | DEC | FRACTION | MIXED ;
unit : lengthUnit | DEG | PERCENT | RATE_UNIT | POWER_UNIT ;
lengthUnit : MM | IN | THOU | TENTHS | UM | UIN ;

// ---- Words -----------------------------------------------------------------------------------------------

LANGUAGE:'language'; PLAN:'plan'; SHOP:'shop'; PART:'part'; STOCK:'stock'; SETUP:'setup'; OWN:'own'; LOG:'log'; INSPECT:'inspect';

UNITS:'units'; USE:'use'; LET:'let'; NOTE:'note'; MATERIAL:'material'; MACHINE:'machine'; LENGTH:'length'; WIDTH:'width';
HEIGHT:'height'; DATUM:'datum'; SQUARE:'square'; PARALLEL:'parallel'; FLAT:'flat'; TOLERANCE:'tolerance'; SURFACE:'surface';
BREAK:'break'; HOLE:'hole'; PATTERN:'pattern'; SIZE:'size'; SAWN:'sawn'; ROLLED:'rolled'; CAST:'cast'; DRAWN:'drawn';
MILLED:'milled'; GROUND:'ground'; KERF:'kerf'; WANDER:'wander'; MAKE:'make'; HOLD:'hold'; SEAT:'seat'; TRUE:'true'; TRAM:'tram';
CUTTER:'cutter'; TOUCH:'touch'; FIND:'find'; ZERO:'zero'; SET:'set'; LOCK:'lock'; UNLOCK:'unlock'; MOVE:'move'; CLEAN:'clean';
ROUGH:'rough'; FINISH:'finish'; SPOT:'spot'; DRILL:'drill'; REAM:'ream'; TAP:'tap'; BORE:'bore'; COUNTERBORE:'counterbore';
COUNTERSINK:'countersink'; SLOT:'slot'; POCKET:'pocket'; PROFILE:'profile'; STEP:'step'; CHAMFER:'chamfer'; OUTLINE:'outline';
WINDOW:'window'; CORNER:'corner'; DEBURR:'deburr'; WIPE:'wipe'; MEASURE:'measure'; CHECK:'check';

VISE:'vise'; PARALLELS:'parallels'; DRILLS:'drills'; REAMER:'reamer'; INSTRUMENT:'instrument'; PACKING:'packing';
SPACER:'spacer'; CLAMP:'clamp'; BAR:'bar'; FINDER:'finder'; ANGLE_PLATE:'angle-plate'; V_BLOCK:'v-block'; SUBPLATE:'subplate';
LIMITS:'limits'; SEVERITIES:'severities'; REV:'rev'; ALL:'all'; RA:'ra'; EDGES:'edges'; OF:'of'; MOST:'most';
DIA:'dia' | '\u2300'; FROM:'from'; DEPTH:'depth'; THROUGH:'through'; THREAD:'thread'; SPOTFACE:'spotface'; RADIUS:'radius';
CIRCLE:'circle'; ROW:'row'; GRID:'grid'; COUNT:'count'; FIRST:'first'; ABOUT:'about'; UP:'up'; DOWN:'down'; FIXED:'fixed'; ON:'on';
PAIR:'pair'; ONE:'one'; BED:'bed'; TABLE:'table'; SOFT_STRIP:'soft-strip'; MID_GRIP:'mid-grip'; BESIDE:'beside';
OVERHANG:'overhang'; STOP:'stop'; TAPPED:'tapped'; BOTH:'both'; TIGHT:'tight'; GRIP:'grip'; LIGHT:'light'; UPRIGHT:'upright';
OVER:'over'; HEAD:'head'; PAPER:'paper'; BELOW:'below'; EDGE:'edge'; CENTRE:'centre' | 'center'; LEAVING:'leaving'; PASS:'pass';
PASSES:'passes'; CONVENTIONAL:'conventional'; CLIMB:'climb'; TRAVEL:'travel'; OFFSET:'offset'; TOWARD:'toward'; SPEED:'speed';
FEED:'feed'; REPEAT:'repeat'; THEN:'then'; HAND:'hand'; GUIDE:'guide'; SPINDLE:'spindle'; PECK:'peck'; SEEN:'seen';
ELLIPSE:'ellipse'; OBROUND:'obround'; CUSP:'cusp'; MIRRORED:'mirrored'; BLEND:'blend'; TANGENT:'tangent'; BOSS:'boss';
ARC:'arc'; HOLLOW:'hollow'; JAWS:'jaws'; READ:'read';

LEFT:'left'; RIGHT:'right'; FRONT:'front'; BACK:'back'; TOP:'top'; BOTTOM:'bottom';
OPERATOR_LEFT:'operator-left'; OPERATOR_RIGHT:'operator-right'; OPERATOR_FRONT:'operator-front'; OPERATOR_BACK:'operator-back';
X:'x' | '\u00d7'; Y:'y'; Z:'z';
AT:'at'; BY:'by'; TO:'to'; IN:'in' | 'inch'; WITH:'with';

MM:'mm'; THOU:'thou'; TENTHS:'tenth' 's'?; UM:'um' | '\u00b5m' | '\u03bcm'; UIN:'uin' | '\u00b5in' | '\u03bcin';
DEG:'deg' | '\u00b0'; PERCENT:'%';
RATE_UNIT : 'm/min' | 'ft/min' | 'mm/min' | 'in/min' | 'mm/tooth' | 'in/tooth' | 'thou/tooth' | 'mm/rev' | 'in/rev' | 'rpm' ;
POWER_UNIT : 'kw' | 'hp' ;

PM : '+-' | '+/-' | '\u00b1' ;
PLUS:'+'; MINUS:'-' | '\u2212'; STAR:'*'; SLASH:'/'; EQ:'='; COMMA:','; COLON:':'; LP:'('; RP:')';

// Designations with a blank inside are one token each, so that `no`, `letter`, `ba` stay free as names.
NUMBER_DRILL : 'no' BLANK+ D ;
LETTER_DRILL : 'letter' BLANK+ [a-z] ;
THREAD_M     : 'm' D ('.' D)? ('x' D ('.' D)?)? ;
THREAD_NAMED
  : ('unc' | 'unf') BLANK+ ('no' BLANK+ D '-' D | (D '-')? D '/' D '-' D | D '-' D)
  | 'me' BLANK+ (D '-')? D '/' D '-' D
  | ('bsw' | 'bsf' | 'bsp') BLANK+ ((D '-')? D '/' D | D)
  | 'ba' BLANK+ D
  ;

// Mixed numbers and fractions are written without blanks; with blanks `-` and `/` are operators.
MIXED     : D '-' D '/' D ;
FRACTION  : D '/' D ;
TIGHT_DIV : D '/' D '.' D? | D '.' D '/' D ('.' D)? ;   // 6/2.5, +0/0.03: never valid, said so in the message
HASH_SIZE : '#' D ;                                      // `#7` is neither a comment nor a drill
DEC       : D '.' D? | '.' D ;
INT       : D ;
STRING    : '"' ~["\r\n]* '"' ;
OPEN_STRING : '"' ~["\r\n]* ;
ID        : ([a-wyz] | 'x' [a-z_] | L) (AN | '_' | L)* ('-' (AN | '_' | L)+)* ;

fragment AN : [a-z0-9] ;
// Ranges whose capitals are a range, too: only then does `caseInsensitive` add the right ones.
fragment L : [\u00e0-\u00f6\u00f8-\u00fe] | '\u00df' | '\u00ff' ;
fragment D : [0-9]+ ;
fragment BLANK : [ \t\u00a0] ;

JOIN    : '\\' [ \t]* ('#' ~[\r\n]*)? ('\r\n' | '\n' | '\r') -> channel(HIDDEN) ;
NL      : '\r\n' | '\n' | '\r' ;
WS      : [ \t\u00a0\u2007\u202f\ufeff]+ -> channel(HIDDEN) ;
COMMENT : '#' (~[0-9\r\n] ~[\r\n]*)? -> channel(HIDDEN) ;
ERROR   : . ;
