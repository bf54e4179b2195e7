grammar Handwheel;

file : WORD* EOF ;

WORD    : [a-zA-Z0-9]+ ;
NEWLINE : [\r\n]+ -> channel(HIDDEN) ;
BLANK   : [ \t]+ -> channel(HIDDEN) ;
ERROR   : . ;
