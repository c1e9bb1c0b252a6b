"""Yes, maybe and no, in their many forms."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from calendar import month_name
from dataclasses import replace
from functools import partial
from zoneinfo import ZoneInfo

from planning.potluck import Answer
from planning.replies.english import manners, short
from planning.replies.english.openings import Rules
from planning.replies.intents import Intent, ReplyContext, SetAnswer
from planning.replies.text import Sentence

_WE = r"(?:i|we|all of us|both of us|the whole family|us two)"
_ADV = r"(?:(?:also|literally|definitely|totally|so|both|all|still|just|probably|sadly|unfortunately|really|for sure|certainly|absolutely|actually|now|too|there|in that case|happily|of course|very much|sorry|afraid|i am afraid|sure) )*"
_COME = r"(?:make (?:the|your|this) (?:[a-z]+ )?(?:potluck|supper|dinner|party|event|meal|get-together|do|feast)|pop in|drop in|come(?! (?:by|over|round|back|up|down|out|off|true|to (?:think|terms|mind)))|make it(?! (?:quick|short|work|up|clear|happen|easy|easier|count|a|an|the|so|more|less|hot|spicy|vegan|vegetarian|[0-9]|for|with|gluten|without|fast|double|better|look|big|bigger|smaller|small)\b)|be there|join(?: you| in| us| you all| everyone)?|attend|be coming|be joining|be able to (?:come|make it|join|attend|be there|pop in|drop in|get there)|come along|get there|be in|turn up|show up|pop in|drop by|stop by|swing by|be around|be present)"
_COMING = r"(?:coming|joining|attending|going to (?:come|make it|be there|join|attend|be able to (?:make it|come|join|attend))|able to (?:come|make it|join|attend|be there)|free|available|going|around)"

_START = r"(?:^|(?<= ,)|(?<= but)|(?<= and)|(?<= so)|(?<= actually)|(?<= unfortunately)|(?<= sadly)|(?<= ok)|(?<= okay)|(?<= great)|(?<= no)|(?<= yes)|(?<= sorry)|(?<= that)|(?<= :)|(?<= -)) "
"""Where a clause without a subject may begin."""

_SUPPER = r"(?:it|this|that|sure|the|supper|dinner|potluck|party|us|saturday|sunday|friday|[0-9])"
_DAY = r"(?:(?:monday|tuesday|wednesday|thursday|friday|saturday|sunday|sat|sun|fri|mon|tues?|weds?|thurs?)(?: (?:evening|night|afternoon|morning))?|(?:the )?[0-9]{1,2} ?(?:st|nd|rd|th)|that (?:day|date|night|evening|weekend)|then)"
_REASON = r"(?:shifts?|nights?|work|working|works|away|busy|out of town|out of state|abroad|holidays?|vacation|weddings?|birthday|exams?|travell?ing|flights?|flying|hospital|sick|ill|poorly|flu|covid|bug|babysitter|sitter|plans|booked|surgery|funeral|match|game|tournament|practice|training|rehearsal|conference|trip|moving|appointment|deadline|inspection|gig|camp|visitors|in town|recital|on call|concert|migraine|fever|graduation|anniversary)"
"""Why people can't come; beside a "no" it says what the no is about."""
_IN_FOR = r" (?:for|too|as|also|with|and|but|if|on|unless|this|that|all|definitely|sure|yes|bringing|at|by|until|till|after|before|now|then|though|so|please|just|me|us|plus|because|since|depending|provided|we|i|saturday|sunday|friday|monday|tuesday|wednesday|thursday|sat|sun|fri|my|our|both|again|indeed|anyway|tomorrow|sorry|may|no|not|one|two|three|four|five|six|seven|eight|maybe|or|it|will|would|can|is|from|case|whatever|whenever|regardless)(?= )"
"""What follows an "in" that means taking part; anything else may be a place."""
_NO = [
    (r"\bno way (?:that )?(?:i|we) (?:can|could|will|am|are)\b", 0.93),
    (r"\b(?:i|we) would have (?:said yes|come|loved to|been there|jumped at it)\b.*\b(?:but|if|only|were it not)\b", 0.85),
    (
        rf"^ (?:(?:sorry|aw|ah|oh|sadly|,) )*(?:no|nope|nah) , (?:(?:i|we) (?:have|am|are|got)|my|our|the) (?:[a-z]+ ){{0,3}}?{_REASON}(?= )(?!.*\b(?:but|so) (?:i|we) (?:can|will|am|are)\b)",
        0.88,
    ),
    (
        rf"^ (?:(?:sorry|aw|ah|oh|alas|argh|ugh|hi|hey|sadly|,) )*(?:no|nope|nah)(?: sorry| thanks| this time| from (?:me|us))? ,? ?(?!(?:i|we) (?:meant|mean|said)|allerg|problem|worries|need|make (?:it|that)|one |it is )[^?]{{0,60}}\b{_REASON}(?= $| ,| that| then| on| at| this| until| till| for| all)(?!.*\b(?:but|so) (?:i|we) (?:can|will|am|are)\b)",
        0.9,
    ),
    (r"^ (?:(?:sorry|we are|i am|so|sadly|,) )*out(?= $| ,| this (?:time|one|year)| for this)", 0.88),
    (rf"\b(?:neither|none) of us (?:can|could|will|is|are) (?:be )?(?:{_COME}|coming|able)", 0.95),
    (
        rf"\b(?:{_WE} )?would (?:have )?(?:love|like|liked|loved) to(?: {_COME})? but\b(?!.*(?:not sure|depends?|maybe|might|do not know|no idea|can not (?:say|tell|promise|confirm|commit|decide)|not decided|undecided|too early|have to (?:see|check)|need to (?:see|check)|will (?:see|know|check)|unsure|yet))",
        0.82,
    ),
    (r"\bwish (?:i|we) could(?: (?:come|make it|be there|join))?\b", 0.72),
    (rf"\b{_WE} would {_COME} but\b", 0.75),
    (r"(?: so| ,) (?:it is )?(?:a )?no(?= $)|^ no go\b|^ (?:(?:i|we) (?:am|are) )?(?:a )?no[- ]show(?= $| for (?:me|us)| from (?:me|us)| this time| ,| sorry)", 0.85),
    (rf"(?:^ (?:sorry ,? ?)?|\b{_WE} (?:am|are|have been|feel) )(?:so |all |still |really )*(?:sick as (?:a )?(?:dog|parrot)|laid up|under the weather|(?:not|un)well|down with (?:a |the )?(?:cold|fever|flu|bug|stomach|covid)|in bed with|feeling (?:rough|ill|sick|poorly)|throwing up|puking|contagious|on call|snowed in|hospitalized)\b", 0.65),
    (rf"\b(?:{_WE} )?(?:doubt|do not think) (?:it|{_WE} (?:can|will|could))\b", 0.7),
    (
        rf"\b{_WE} (?:am|are|will be) (?:\w+ )?(?:away|out of town|on holiday|on vacation|abroad|travelling|traveling|working|on shift|on nights|on call|on duty|on days|at work|busy|booked|double booked|double-booked|at a wedding|in hospital)\b",
        0.65,
    ),
    (
        r"^ (?:sorry(?: ,)? )?(?:away|busy|working|out of town|booked|double booked|on holiday|on vacation|on shift)\b(?: (?:that|then|on|this))?",
        0.65,
    ),
    (
        rf"\b{_WE} have (?:another|a different|other|a prior|a previous) (?:party|plans?|engagement|commitment|wedding|event|dinner|thing)s?\b|\bother plans\b|\bprior (?:engagement|commitment)",
        0.7,
    ),
    (rf"\b{_WE} {_ADV}(?:can|could|will|would) (?:\w+ )?not {_ADV}{_COME}\b", 0.97),
    (rf"\b{_WE} {_ADV}(?:am|are|is) {_ADV}not {_ADV}{_COMING}\b", 0.96),
    (
        rf"{_START}{_ADV}(?:can|could|will) not {_ADV}(?:{_COME}|do it|do (?:(?:that|this|the) (?:[a-z]+ )?(?:day|date|one|weekend|night|evening)|saturday|sunday|friday|sat|sun|fri|then))\b",
        0.96,
    ),
    (rf"{_START}{_ADV}not {_ADV}(?:coming|joining|attending|going|able to {_COME}|{_COMING})\b", 0.94),
    (rf"\b(?:{_WE} (?:am|are|will be) )?(?:unable to|(?:not|no longer|not actually) able to) {_COME}\b", 0.96),
    (rf"(?:{_START}|\b{_WE} (?:am|are) )no longer (?:coming|joining|attending|free|available|going)\b", 0.96),
    (
        rf"\b(?:{_WE} )?(?:will|have to|going to have to|going to|got to|must|need to) (?:say|be|make (?:it|that)) (?:a )?no\b",
        0.9,
    ),
    (r"\b(?:take|taking|need) a rain ?check\b", 0.88),
    (
        r"^ (?:(?:sorry|maybe|perhaps|hopefully|another time|alas|sadly) ,? ?)*(?:next|another) (?:time|year)(?: then| maybe| for us| i hope| hopefully| perhaps)*(?= $)",
        0.7,
    ),
    (
        rf"\b{_WE} (?:have )?(?:all |both )?(?:got|have|caught|come down with|am down with|are down with) (?:the )?(?:covid|flu|norovirus|a (?:stomach )?bug|a tummy bug|chicken ?pox)\b",
        0.65,
    ),
    (
        rf"\b{_WE} (?:am|are) (?:all |both |still |too |really )*(?:ill|sick|poorly|unwell|isolating|injured|grounded)\b",
        0.65,
    ),
    (
        r"\b(?:that|it) (?:is|will be|falls on) (?:on )?(?:our|my|the|his|her|their|[a-z]+'s) (?:[a-z]+ ){0,2}?(?:anniversary|birthday|wedding|exams?|reunion|holidays?|graduation)\b",
        0.65,
    ),
    (
        r"\b(?:hate|sorry|sad|gutted) to (?:bail|cancel|miss|pull out|drop out|say no|have to (?:bail|cancel|miss))\b",
        0.88,
    ),
    (
        rf"\b{_WE} (?:am |are )?(?:stuck|stranded|snowed under|trapped) (?:in|at|with)\b(?! traffic| a jam)(?!.* late )|^ (?:sorry )?stuck (?:in|at)\b(?! traffic| a jam)(?!.* late )",
        0.65,
    ),
    (
        rf"(?:{_START}|\b{_WE} )(?:have to|has to|got to|need to|must) (?:work|be at work)(?: (?:that|then|on|all|late|$)|(?= $| ,))",
        0.65,
    ),
    (r"^ (?:sorry ,? ?)?no (?:from|for) (?:me|us|our (?:side|house|lot))\b", 0.93),
    (
        r"\b(?:that|it) is (?:now )?(?:a )?(?:definite |firm |sad )*no(?: now)?(?= $| ,| for me| for us| from (?:me|us)| sorry)",
        0.9,
    ),
    (
        rf"\b{_WE} (?:will |would |must |am going to |are going to )?(?:have to )?(?:politely |respectfully |sadly )?decline\b|\b(?:sends?|sending) (?:my|our) (?:apologies|regrets)\b|^ apologies from (?:me|us)\b",
        0.92,
    ),
    (r"\b(?:remove|delete) (?:me|us)(?: from (?:the |this |your )?list)?(?= $| ,)", 0.78),
    (r"\b(?:that|it) is (?:me|us) out\b(?! of)", 0.9),
    (r"\b(?:clashes|conflicts|overlaps) with\b", 0.7),
    (
        r"(?<!\bnot )(?<!\bdare )(?<!\byou )\bcount (?:me|us) out\b(?! (?:for|of|on) (?!this|the (?:supper|party|potluck|meal|dinner|whole)|sat|sun|fri))",
        0.97,
    ),
    (
        rf"\b(?:{_WE} )?(?:will |am going to |are going to |going to )?(?:have to|need to|must|got to|has to) (?:pass|skip|miss|cancel|bail|bow out|decline|drop out|pull out|sit (?:this|it) one? ?out|back out|give it a miss|opt out)\b",
        0.94,
    ),
    (
        rf"\b{_WE} (?:will|am going to|are going to) (?:pass|skip|miss|sit) (?:it|this|this one|on this one|this time|out)\b",
        0.93,
    ),
    (rf"^ (?:{_WE} will )?(?:pass|skip)(?: this time| on this one| this one)?(?: $| ,)", 0.85),
    (
        rf"\b{_WE} (?:am|are) (?:all |both )?out(?: this time| for this one| now| after all)*(?= $| ,| this| for| sorry)",
        0.92,
    ),
    (
        r"\b(?:scratch|cross|strike|take|knock|leave|rule|scrub) (?:me|us)(?: both| all)? (?:off|out)\b(?: the list)?(?= $| ,| for| this| then| please)",
        0.88,
    ),
    (
        r"^ (?:(?:sorry|we are|i am|am) ,? ?)*(?:bowing|opting|dropping|pulling|backing|ducking) out\b(?! of (?!it|this))",
        0.88,
    ),
    (r"^ out(?= $| ,| sorry| for| this)", 0.86),
    (rf"(?:{_START}|\b{_WE} )(?:probably|likely|most likely) not(?= $| ,)", 0.72),
    (
        rf"(?:{_START}|\b{_WE} ){_ADV}(?:(?:will|would|had|should|going to|have to|better|best|rather|then|just|all|three|two|both|am|are|be) )*stay(?:ing)? (?:at home|home|away)(?= $| ,| then| this| instead| for| so| because| with (?:him|her|them|the kids))",
        0.88,
    ),
    (rf"\b{_WE} (?:will |would |am going to |are going to |should |had )(?:better |rather )?give (?:it|this(?: one)?) a miss\b", 0.9),
    (rf"{_START}no can do\b", 0.93),
    (rf"{_START}(?:sadly|unfortunately|regretfully|afraid) (?:no|not)\b", 0.93),
    (
        rf"{_START}(?:sorry(?: ,)? )?not (?:this (?:time|year|one|weekend|month)|me|us|for me|for us|going to happen|possible)\b",
        0.9,
    ),
    (r"\b(?:it is |that is |that will be |is )?an? (?:definite |firm |sad |big )?no (?:from|for) (?:me|us)\b", 0.95),
    (
        r"^ no ,? ?(?:out of (?:the )?(?:country|town|state)|away|abroad|on holiday|on vacation|other plans|(?:already )?booked|not (?:that|this) (?:day|weekend|time)|(?:that|this) (?:day|weekend) (?:is|does))",
        0.9,
    ),
    (
        r"^ (?:sorry(?: ,)? )?no(?:(?: ,)? sorry|(?: ,)? (?:i|we) can not)?(?= $|(?: ,)? (?:sorry|unfortunately|sadly|afraid|i can not|we can not|can not|i am not|we are not|i will not|we will not|will not|not coming|not this|but|busy|working|away|i have|we have|i am (?:away|working|busy)|we are (?:away|busy|working)))",
        0.9,
    ),
    (rf"\b{_WE} (?:will|can) not\b(?= $| ,| sorry| unfortunately| this time| after all)", 0.88),
    (rf"{_START}(?:can|will) not(?= $| ,| sorry| this time| unfortunately)", 0.9),
    (
        r"\b(?:will|going to) (?:have to )?miss (?:it|this one|out|you all|(?:the|your) (?:[a-z]+ )?(?:supper|dinner|party|potluck|feast|meal|event|evening|fun))\b",
        0.93,
    ),
    (rf"\b{_WE} (?:do|will) not think {_WE} (?:can|will|am|are) (?:be able to )?(?:{_COME}|coming)?\b", 0.82),
    (r"\b(?:does|do|will|would) not (?:really )?(?:work|suit)(?: for)?(?: me| us|(?= $| ,))", 0.93),
    (r"\bchanged my mind (?:,? )?(?:and )?(?:i )?(?:am|will|can) not\b", 0.95),
    (
        rf"(?:{_START}|\b{_WE} ){_ADV}(?:can|could) not (?:(?:on|this|do|make|manage) )*{_DAY}(?= $| ,| sorry| i am afraid| afraid| alas| sadly| thanks| unfortunately| this time| after all| because| as| so| but| -)",
        0.88,
    ),
]
_MAYBE = [
    (r"\b(?:need|have|got|trying|going|just need) (?:to )?(?:just |still |first )*(?:find|get|sort|arrange|line up|book|figure) (?:out )?(?:a |the |some |my |our )?(?:sitter|babysitter|baby sitter|childcare|ride|lift|cover|someone (?:to|for)|somebody (?:to|for)|day off|time off|night off|shift)\b", 0.86),
    (rf"{_START}{_WE} (?:might|may|could)(?= $| ,| but)", 0.88),
    (r"\b(?:as|for) (?:a |[0-9]{1,2} |two |three |four |five |six )?maybes?(?= $| ,| for)|^ (?:[0-9]{1,2}|two|three|four|five|six|both) maybes?(?= $| ,)", 0.93),
    (r"^ (?:(?:ok|sorry|hmm|,) )*ask (?:me|us) (?:again |back )?(?:on |next |in |closer|nearer|later|tomorrow|monday|tuesday|wednesday|thursday|friday|saturday|sunday)", 0.85),
    (
        rf"{_START}(?:a |definite |it is a |that is a |big |solid )*(?:maybe|perhaps|possibly|potentially)(?= $| ,| i | i$| we (?!should|could)| if | not | depend| later| for now| for me| for us| but | will | can | still| a | though| coming| yes| no| :| -| from| this time| on | tbc)",
        0.93,
    ),
    (rf"\b{_WE} {_ADV}(?:might|may) (?:not )?(?:just )?{_COME}\b", 0.95),
    (rf"\b{_WE} (?:might|may) (?:be|have to|not)\b(?! (?:bring|make|(?:a (?:bit|little|few|tad) |(?:[a-z0-9]+ ){{0,3}}(?:minutes?|mins?|hours?) |running |slightly |very )*(?:late|later|delayed|early|earlier)\b))", 0.75),
    (
        rf"\b(?:{_WE} (?:am|are) )?not (?:yet |completely |totally |entirely |100 % )*(?:sure|certain)(?: yet)?(?: (?:if|whether|that) {_WE} (?:can|will|could)(?: {_COME})?| i can| yet|(?= $| ,))",
        0.92,
    ),
    (rf"\b(?:{_WE} )?(?:will |am going to |going to )(?:try|do (?:my|our) best)(?: to {_COME}|(?= $| ,| but))", 0.92),
    (
        rf"\b(?:{_WE} )?(?:really |do )*(?:hope|hoping|am hoping|are hoping) (?:to|(?:that )?{_WE} (?:can|will)) {_COME}\b",
        0.9,
    ),
    (r"^ unlikely\b", 0.72),
    (r"^ hopefully\b", 0.85),
    (rf"{_START}(?:might|may) (?:not )?(?:just )?{_COME}", 0.93),
    (
        r"\bwill know (?:more |for sure )?(?:on|by|later|tomorrow|soon|next|in|when)\b|\bask me (?:again|later|tomorrow)\b|^ only if\b",
        0.85,
    ),
    (
        r"\b(?:do not know(?! (?:how|who|where|why|what|that))|no idea(?! (?:what|how|who|where|why))|can not say|can not tell|can not (?:promise|confirm|commit|decide)|hard to say|too early to say|have to see|will see(?! (?:you|ya|y'all|everyone|everybody|all|them))|need to check|have to check|let me check|will check|will let you (?:all )?know|will tell you|get back to you|will confirm)(?: yet| if i can| whether i can| for sure| later| tomorrow| soon| tonight| nearer the time)?\b",
        0.85,
    ),
    (
        r"\b(?:count|put|mark|note) (?:me|us) (?:down )?(?:as|for) (?:a )?(?:probable|possible|likely|doubtful|tentative)\b",
        0.9,
    ),
    (r"\bdepends\b", 0.8),
    (r"^ (?:it is |that is )?(?:quite |just |very )?possible(?: for (?:me|us))?(?= $| ,| but)", 0.85),
    (r"\b(?:let|tell) you (?:know )?(?:on|by|later|tomorrow|next|nearer|closer|after|when|in|this)\b", 0.85),
    (rf"(?:{_START}|\b{_WE} )(?:might|may|could) (?:do|manage(?: it)?|well do)(?= $| ,)", 0.85),
    (r"\btentative(?:ly)?\b|^ unsure\b", 0.85),
    (
        r"^ (?:(?:it is|that is|we are|i am|sorry|put (?:me|us) down as|hmm|a) (?:, )?)*(?:a |an )?(?:[a-z]+ )?maybe(?= $| ,)",
        0.88,
    ),
    (r"\b(?:leaning(?: towards?| to)?|probable|likely|almost) (?:a )?(?:yes|no)\b", 0.88),
    (r"\brun (?:it|this|that) (?:by|past)\b", 0.82),
    (r"\bwill know (?:once|after|as soon as|if)\b", 0.85),
    (r"^ (?:doubtful|iffy|uncertain|undecided|debatable|questionable|tricky)(?= $| ,)", 0.8),
    (
        r"\b(?:[1-9][0-9]?) ?%(?: (?:sure|certain|likely|chance|there|in|yes))?\b|\b(?:not|less than|not quite|not yet) (?:100|a hundred) ?%|\b[1-9][0-9]?/[1-9][0-9](?= $| ,)",
        0.9,
    ),
    (rf"{_START}(?:i |we )?(?:think|believe|guess|reckon|hope) so\b", 0.85),
    (rf"(?:{_START}|\b{_WE} )should be (?:able|ok|okay|fine|good|there|free|possible|doable|in)\b", 0.85),
    (rf"(?:{_START}|\b{_WE} (?:am|are) )(?:just |still )*(?:waiting (?:on|for|to hear)|checking with)\b", 0.75),
    (
        r"\b(?:will|have to|need to|must|let me|going to|got to) (?:just |first )*(?:double[- ]check|check|ask (?=[^,]* first)|see)(?: (?:with|if|whether)| my| our| the| first|(?= $))",
        0.8,
    ),
    (
        r"\b(?:touch and go|up in the air|fingers crossed(?= $| ,)|if all goes well|too soon to (?:say|tell))\b",
        0.85,
    ),
    (r"^ (?:probably|likely|most likely) (?:a )?(?:yes|in|coming|there|no)\b", 0.88),
    (
        r"(?:^|(?<= ,)|(?<= but)|(?<= i)|(?<= we)) (?:might|may) have to (?:work|miss|cancel|skip|leave|travel|go|be|look|stay)\b",
        0.86,
    ),
    (r"^ 50:50\b", 0.93),
    (
        r"^ (?:50 ?/ ?50|fifty-fifty|fifty fifty|50-50|tentative|tentatively|undecided|pencil (?:me|us) in|(?:put|count|mark|list|have) (?:me|us) (?:down )?(?:as|for) (?:a |an? (?:definite |strong )?)?maybe|tbd|tbc|unsure|on the fence)\b",
        0.93,
    ),
    (
        r"\b(?:on the fence|still undecided|(?:put|count|mark|list|have) (?:me|us) (?:down )?as (?:a )?maybe|am a maybe|are a maybe|pencil (?:me|us) in)\b",
        0.94,
    ),
    (rf"\b{_WE} (?:could|should) {_ADV}(?:be able to )?(?:probably |maybe )?{_COME}\b(?! if you)", 0.72),
    (rf"\b(?:probably|likely|most likely) (?:not )?(?:coming|{_COME})\b", 0.85),
]
_YES = [
    (rf"^ (?:(?:yes|ok|oh|of course|sure|,) )*{_WE} would {_ADV}(?:love|like|be delighted) to(?= $| ,(?!.*\bbut\b))", 0.88),
    (r"(?:^|(?<= ,)|(?<= so)|(?<= yes)|(?<= and)|(?<= but)|(?<= now)|(?<= :)) (?:(?:i|we) )?(?:coming|in|can (?:come|make it|do it)|am in|are in|am coming|are coming|will come|will be there) after all(?= $| ,| \+| with| and| [0-9])", 0.95),
    (r"\bturns out (?:that )?(?:i|we) (?:can|am able|are able|am free|are free)(?! not)(?= $| ,| come| make| do| after)|^ (?:(?:hey|ok|yes|so|oh|good news|,|:) )*(?:i|we) can(?: come| make it)? (?:after all|now|then)(?= $| ,)", 0.92),
    (
        rf"\b{_WE} {_ADV}(?:will|can|shall|am going to|are going to|would love to|will be able to|will gladly|am happy to|are happy to) {_ADV}{_COME}\b",
        0.96,
    ),
    (
        rf"\b{_WE} {_ADV}(?:will|can) {_ADV}(?:all |both )?(?:[0-9]{{1,2}}|two|three|four|five|six)(?: of us)? {_COME}",
        0.93,
    ),
    (r"(?:\b(?:i am|we are)|^(?: yes| ok| ,| am)*) down(?= $| ,| for it| for this)", 0.85),
    (
        rf"\b{_WE} {_ADV}(?:am|are|is|will be) {_ADV}(?:coming|joining|attending|in(?= $| [^a-z]|{_IN_FOR})|there|on board|up for it|game|a yes|both coming|able to come|able to make it|all in|definitely in|keen|good to go)\b(?! (?:a|the|charge|trouble|love|bed|town|here))",
        0.95,
    ),
    (
        rf"\b(?:count|deal|include|sign|put) (?:me|us|all of us|both of us) in\b(?! (?:a|an|the|hospital|bed|charge|touch|mind|danger|trouble|mood|any|my|our) )(?! for (?!{_SUPPER}))",
        0.96,
    ),
    (
        r"^ (?:(?:ok|okay|oh|well|so|and|why) (?:, )?)?(?:yes|sure|absolutely|definitely|totally|of course|certainly|affirmative|yessir|yes sir|yes ma.am|aye|yes please|sure thing|for sure|why not|ok yes|you bet|with pleasure|gladly|naturally|hell yes|heck yes|oh yes|you bet|100 %)(?!(?: ,)? (?:that|it is|it was|this|they|he|she|you(?! can count)|those|exactly|true|indeed|really|seriously|still|again|even|sadly|another|me too|i (?:remember|know|think|saw|love|like|agree|heard|did|do)|whatever))(?= $| ,| ok(?:ay)? $| if | unless | x[0-9]| but| i (?:will|can|am|would)| we (?:will|can|are|would)| and | yes| count| coming| see| to | for | with| definitely| of course| -| will| am| [0-9]| all | my | me |! )",
        0.93,
    ),
    (
        rf"{_START}{_ADV}(?:will |can |still |yes |definitely )*(?:{_COMING.split('|free')[0]})|coming)(?= $| ,| with| along| and| too| for| on| \+| alone| but| [0-9]| as| if | unless | provided )",
        0.9,
    ),
    (rf"{_START}{_ADV}(?:will|can) {_ADV}(?:be there|make it|come|be coming)\b", 0.94),
    (r"\bsee (?:you|ya|yous|ye|y'all|youse)(?: all| lot| guys| folks| both)? (?:there|then|on|saturday|sunday|friday|at)\b", 0.85),
    (r"\b(?:would not|will not) miss (?:it|this)(?: for the world| for anything)?\b", 0.95),
    (r"^ (?:happy|delighted|thrilled|excited|glad) to (?:come|be there|join|attend|accept)\b", 0.93),
    (
        rf"\b{_WE} would (?:love|like|be happy|be delighted|be glad) to(?: come| join| attend| be there)(?: along)?\b(?!.*\bbut\b)",
        0.88,
    ),
    (r"^ (?:am |i am )?(?:so |really )?looking forward to (?:it|this|seeing (?:you|everyone))(?= $| ,)", 0.7),
    (
        rf"{_START}(?:(?:that|it|this|the|saturday|sunday|friday|monday|tuesday|wednesday|thursday|date|day|time|[0-9]{{1,2}}(?:st|nd|rd|th)?|st|nd|rd|th) )*(?:works|suits|is (?:fine|good|perfect|great|ok|okay)) (?:well )?(?:for|with) (?:me|us|all of us|both of us)\b",
        0.9,
    ),
    (
        r"^ (?:yes(?: ,)? )?(?:(?:that|it|this|the|saturday|sunday|friday|date|day|time) )+(?:works|suits)(?= $| ,)",
        0.85,
    ),
    (rf"(?:{_START}{_WE} (?:am|are|will be)|^) free(?= $| ,| that| then| on)", 0.88),
    (r"^ in(?= $| ,| if )", 0.9),
    (
        r"\b(?:it is |that is |that will be |is )?an? (?:definite |firm |big |sure )*yes (?:from|for) (?:me|us|both|all|the)\b|^ yes from (?:me|us|both|all|the)\b",
        0.95,
    ),
    (
        r"\b(?:convinced|persuaded) (?:me|us)\b|\btwist(?:ed)? (?:my|our) arm\b|\btalked (?:me|us) into it\b|^ (?:oh )?go on then\b",
        0.85,
    ),
    (
        r"\bsave (?:me|us) (?:a|some|two|three) (?:seat|spot|place|chair|room)s?\b|\btry (?:and|to) stop (?:me|us)\b",
        0.85,
    ),
    (r"^ (?:ok|okay|k|kk|okey dokey|okie dokie|fine|alright|all right)(?: then| by me| with me)?(?= $)", 0.6),
    (r"^ would (?:really |so )?love to(?: come| join| be there)?(?= $| ,)(?!.*\bbut\b)", 0.88),
    (
        r"\b(?:put|mark|note) (?:me|us) (?:down )?(?:as )?(?:a )?(?:yes|coming|attending|in(?! (?:a|an|the|hospital|bed|charge|touch|mind) ))\b",
        0.95,
    ),
    (r"\byou can count on (?:me|us)\b", 0.93),
    (
        r"\b(?:consider|mark|note|put|write|have|pencil) (?:me|us|all of us|both of us) (?:down )?(?:as |in as )?(?:in(?= $| ,)|attending|coming|a yes|yes)(?! (?:a|the) )",
        0.93,
    ),
    (r"^ (?:yes |ok |sure |please |and |,)*count (?:me|us)(?= $| ,)", 0.85),
    (r"^ (?:me|us) too(?: ,)? (?:i|we) (?:will|am|are)", 0.8),
    (
        rf"\b{_WE} (?:have )?(?:got|swapped|arranged|changed) (?:it off|my shift|the day off|the night off|a sitter|a babysitter)\b",
        0.6,
    ),
    (r"\b(?:i|we) accept\b", 0.9),
    (r"^ for (?:me|us) (?:it|that|this|saturday|sunday|friday) (?:is|works|will be|would be) ?(?:perfect|fine|good|great|ok|okay|well|very good)?(?= $| ,)", 0.85),
    (rf"{_START}be there(?= $| ,| at| around| by| after| with| for| before| late)", 0.85),
    (r"^ (?:confirmed|confirming|attending|affirmative|roger(?: that)?|booked in|locked in)(?= $| ,)", 0.86),
    (
        rf"\b{_WE} would (?:be )?(?:so |very |absolutely |more than )*(?:delighted|happy|honou?red|thrilled|glad)(?: to (?:come|join|be there|attend|accept))?(?= $| ,)",
        0.88,
    ),
    (
        r"^ (?:(?:definitely|absolutely|totally|for sure|certainly|ok|okay|yes|surely) ,? ?)+(?:there|in|coming|joining)(?= $| ,| with| and)",
        0.93,
    ),
    (r"\b(?:am|are) (?:in|coming) after all\b|\bcan (?:come|make it) after all\b", 0.97),
]
_CONDITION = re.compile(
    r"\b(?:if|unless|as long as|provided|assuming|so long as|depending on|only if|once i know|until i know)\b"
    r"(?! (?:that|this|needed|you like|you want|that is ok|that is okay|that is all right|that is fine|you need|anyone|anybody|it helps|wanted|required|necessary|possible|there is (?:room|space)|not|you do not mind|nobody|no one))"
)
_FIRM_NO = (
    re.compile(rf"\bno way\b|\bwould have (?:said|come|loved|been|jumped)\b|\b(?:neither|none) of us|would (?:love|like) to(?: {_COME})? but|\bwish (?:i|we) could|\b(?:doubt|do not think) (?:it|i|we)\b|\bcan not\b"),
    *(re.compile(pattern) for pattern, _ in manners.NO[:3]),
)  # fmt: skip
"""What makes a no of a sentence that also holds a yes ("I'd love to come but I can't")."""
_REGRETTED = re.compile(r"^ (?:(?:so|very|really|,) )*(?:regrettably|unfortunately|sadly|alas|regretfully|to my regret)(?: ,)? (?:i|we|my|our|it|that|this|there|the) ")
"""How a "no" begins even where its reason is a strange one."""
_TRAILING_NO = re.compile(r"\b(?:afraid not|guess not|think not|rather not)(?= $| ,| sorry)")


_LEADS = (
    _START,
    rf"(?:{_START}|\b{_WE} )",
    rf"(?:{_START}|\b{_WE} (?:am|are) )",
    rf"\b{_WE} ",
    manners.START,
    rf"(?:{manners.START}|\b{manners.WE} )",
    rf"\b{manners.WE} ",
)
_RULES = (
    (Answer.NO, Rules([*_NO, *manners.NO], _LEADS)),
    (Answer.MAYBE, Rules([*_MAYBE, *manners.MAYBE], _LEADS)),
    (Answer.YES, Rules([*_YES, *manners.YES], _LEADS)),
)


_OK = re.compile(r"^ (?:ok|okay|k|kk|okey|okie|fine|alright|all right)\b")
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_CHATTED = re.compile(
    rf"^ (?:(?:yes|ok|sure|of course|definitely|absolutely|oh|well|great|hurrah|yay|fantastic) ,? ?)*(?:(?:{_WE}|all [a-z0-9]+ of us) (?:am|are|will be) {_ADV}in|(?:please )?count (?:me|us|both of us|all of us) in|(?:i|we) would {_ADV}(?:really )?(?:love|like) to (?:come|join(?: in| you)?|be there))"
    r"(?: (?:too|as well|for sure|definitely|also|for it|for this|all of us|both of us))*(?= $| ,| with | and | \+| - )"
)


def plain_yes(sentence: Sentence) -> bool:
    """A yes that is one even in the open chatter, without a word about the supper ("I'm in", "count us in")."""
    return _CHATTED.match(sentence.text) is not None and not sentence.question


def _other_day(sentence: Sentence, context: ReplyContext) -> bool | None:
    """Whether a weekday or date named here is surely not the potluck's day; None when no other day is named."""
    if context.starts_at is None:
        return None
    try:
        day = context.starts_at.astimezone(ZoneInfo(context.timezone))
    except (KeyError, ValueError, OSError):
        return None
    named = {w for w in _WEEKDAYS if re.search(rf" (?:on |this |do |make )?{w}(?:s)? ", sentence.text)}
    numbers = {int(n) for n in re.findall(r" (?:the )?([0-9]{1,2}) ?(?:st|nd|rd|th)(?= )", sentence.text)}
    if not named and not numbers:
        return None
    if _WEEKDAYS[day.weekday()] in named or day.day in numbers:
        return None
    return True


_SHORT = re.compile(
    r"^ (?:(?:yes|no|sure|of course|course|indeed|oh) ,? ?)*(?:i|we) (?:(?:am|are|will|can|do|would|shall)(?P<not> not)?)(?: (?:indeed|too|for sure|sure|sorry|yes|now|be|all|both|afraid))*(?= $)"
)
"""A short answer to "are you coming?"."""
_CHANGED = re.compile(
    r"\b(?:now|make (?:that|it|us|me)|(?:changing|changed|change|switch|switching)(?: (?:me|us|it|my answer|our answer|that))? (?:to|into)) (?:a |an |definite |firm )*(?P<what>yes|no|maybe)\b"
    r"|^ (?:yes|no|maybe) (?:, )?(?:wait|sorry|actually|hang on|hold on|i mean|oops|scratch that|no wait)(?: ,)? (?P<last>yes|no|maybe)(?= $| ,)"
    r"|(?:it is|that is|i am|we are|put me down as) (?:a |an )?(?P<is>yes|no|maybe) now(?= $| ,)|\b(?:i|we) (?:meant|mean) (?:to say )?(?P<meant>yes|no|maybe)(?= $| ,)"
)


def _plainly(sentence: Sentence, context: ReplyContext) -> SetAnswer | None:
    """An answer that its place or its form makes plain: "we are indeed" below the question, "now a yes"."""
    if (match := _CHANGED.search(sentence.text)) is not None:
        start, end = sentence.span_of(match)
        said = match["what"] or match["last"] or match["is"] or match["meant"]
        return SetAnswer(context.writer, Answer(said), start=start, end=end, confidence=0.93)
    match = _SHORT.match(sentence.text)
    if match is None or (context.asked != "answer" and context.replying_to != "board"):
        return None
    start, end = sentence.span_of(match)
    answer = Answer.NO if match["not"] or sentence.text.startswith(" no ") else Answer.YES
    return SetAnswer(context.writer, answer, start=start, end=end, confidence=0.9 if context.asked else 0.75)


_ANOTHERS = re.compile(r" (?:a )?(?:maybe|no|yes) from (?!me |us |our |my |both |all |the |here |this )[a-z]+(?= )")
"""The answer of somebody else beside the writer's own."""
_CORRECTS = re.compile(
    r"^ (?:no|nope)(?: ,)?(?: (?:sorry|wait|hang on|hold on|oops))*(?: ,)? (?:(?:i|we) (?:meant|mean|said)|make (?:it|that)|(?:it|that|there) (?:is|was|should be|are|will be)|should be|meant)\b"
)
"""A no that takes back what was understood, and answers nothing."""
_OF_COMING = re.compile(r"\b(?:com(?:e|ing)|make it|be there|join|attend|free)\b|^ (?:maybe|perhaps|might) $")


_GO_AHEAD = re.compile(
    r"^ (?:(?:yes|sure|ok|okay|oh|,) )*(?:go (?:ahead|for it|on then)|(?:please )?do (?:it|so|that)|do|be my guest|fine (?:by|with) (?:me|us)|works for (?:me|us)|that is (?:right|correct|fine|it|the one))(?: (?:then|,|please))*(?= $)"
)
"""A yes to a question of ours that is not about coming."""
_SOMEWHERE = re.compile(r" (?:i am|we are|(?:i|we) will be) (?:(?:still|currently|actually|away|over|up|down|off|all|both|back|then) )*in (?P<where>[^\W\d_]+)(?= )")
_NO_PLACES = frozenset((*_WEEKDAYS, *(m.lower() for m in month_name if m), "i", "the", "for", "and", "if"))
_STATES = frozenset(("trouble", "bed", "love", "charge", "town", "hospital", "a", "an", "pain", "mourning", "shock", "luck", "hurry"))


def _place(sentence: Sentence) -> int | None:
    """Where the sentence tells of the place its writer is in ("we're in Portugal"): the token, which has a capital."""
    match = _SOMEWHERE.search(sentence.text)
    if match is None or match["where"] in _NO_PLACES:
        return None
    at = sentence.token_range(match, "where")[0]
    token = sentence.tokens[at]
    shouted = all(t.raw.isupper() for t in sentence.tokens if t.raw.isalpha())
    if shouted:
        return at if re.match(_IN_FOR, f" {token.plain} ") is None and token.plain not in _STATES else None
    return at if token.raw[:1].isupper() else None


def _no_place(sentence: Sentence, match: re.Match[str]) -> bool:
    """Whether what was matched is no place its writer is in: who is in Portugal is not in."""
    if not match[0].endswith(" in"):
        return True
    return _place(sentence) != sentence.token_range(match)[1]


def read_answer(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The writer's own answer in this sentence; a condition makes a yes a maybe."""
    if (plain := _plainly(sentence, context)) is not None:
        return [plain]
    if context.asked == "yes-no" and (match := _GO_AHEAD.match(sentence.text)) is not None:
        start, end = sentence.span_of(match)
        return [SetAnswer(context.writer, Answer.YES, start=start, end=end, confidence=0.9)]
    if (whole := short.read_short(sentence, context)) is not None:
        return [whole]
    text = _ANOTHERS.sub(lambda m: " " + "_" * (len(m[0]) - 1), sentence.text)
    found: list[tuple[int, SetAnswer]] = []
    for answer, rules in _RULES:
        if (best := rules.best(text, partial(_no_place, sentence))) is None:
            continue
        confidence, match = best
        start, end = sentence.span_of(match)
        conditional = _CONDITION.search(sentence.text) is not None
        if conditional and answer is Answer.NO:
            confidence = 0.7  # "if it rains I won't come"
        given = Answer.MAYBE if conditional else answer
        found.append(
            (match.start(), SetAnswer(context.writer, given, conditional, start=start, end=end, confidence=confidence))
        )
    if not found and (trailing := _TRAILING_NO.search(sentence.text)) is not None:
        start, end = sentence.span_of(trailing)
        found.append((0, SetAnswer(context.writer, Answer.NO, start=start, end=end, confidence=0.85)))
    if not found and not sentence.question and _REGRETTED.match(sentence.text) and " but " not in sentence.text:
        found.append((0, SetAnswer(context.writer, Answer.NO, start=sentence.tokens[0].start, end=sentence.tokens[-1].end, confidence=0.58)))
    if not found and not sentence.question and context.addressed and _place(sentence) is not None:
        start, end = sentence.span(0, len(sentence.tokens))
        found.append((0, SetAnswer(context.writer, Answer.NO, start=start, end=end, confidence=0.6)))
    if found and _CORRECTS.match(sentence.text):
        found = [(at, f) for at, f in found if at > 8 or f.answer is not Answer.NO]  # "no sorry, I meant 3"
    if context.asked in ("people", "bring", "diets", "servings") and not _OF_COMING.search(sentence.text):
        kept = (Answer.YES, Answer.NO) if context.asked == "people" else (Answer.YES,)
        found = [(at, f) for at, f in found if f.answer in kept]  # "don't know yet", "pass" are not about coming
    invited = context.replying_to == "board" or context.asked == "answer"
    if not invited and found and found[0][1].confidence == 0.6 and _OK.match(sentence.text):
        return []  # "ok" elsewhere only says that it was seen
    if not found:
        return []
    if (other := _other_day(sentence, context)) is not None:
        if all(f.answer is not Answer.YES for _, f in found):
            return []  # "can't on Friday", and the potluck is on Saturday
        if other:
            found = [(at, replace(f, confidence=min(f.confidence, 0.6))) for at, f in found]
    answers = {f.answer for _, f in found}
    if Answer.NO in answers and any(p.search(sentence.text) for p in _FIRM_NO):
        return [next(f for _, f in found if f.answer is Answer.NO)]
    if Answer.MAYBE in answers:  # "maybe, I'll try to come" is a maybe
        return [next(f for _, f in found if f.answer is Answer.MAYBE)]
    if len(answers) > 1:  # "yes ... can't": the later one, not surely
        return [replace(max(found, key=lambda f: f[0])[1], confidence=0.6)]
    return [found[0][1]]
