"""Yes, maybe and no as the polite, the shy, the foreign and the street say it: one verb of coming, its subject left out
or not, and around it what shades it. `answers` adds its own rules to these."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

WE = r"(?:i|we|all of us|both of us|the (?:whole )?(?:family|lot|crew|gang)(?: of us)?|us two|us lot)"
ADV = r"(?:(?:also|definitely|totally|so|both|all|still|just|sadly|really|for sure|certainly|absolutely|actually|now|too|happily|gladly|surely|most certainly|most|sure|of course|very much|very|much|only|honestly|truly|indeed|therefore|after all|in fact|more than) )*"
COME = (
    r"(?:attend(?: the [a-z]+| your [a-z]+| this| it)?|be present|be in attendance|partake|participate|take part|show(?: up)?(?= $| ,| for| with| at| around| on| and| there| to)|turn up|rock up|roll (?:up|in)|pull up"
    r"|swing (?:by|over|round)|pop (?:by|over|round)|come (?:by|over|round|along|down|through|on over)|make an appearance|put in an appearance|be among you|be with you(?: all)?|sit at your table"
    r"|be at (?:the|your|this) (?:potluck|supper|dinner|party|do|barbecue|bbq|feast|event|picnic)|be along|join (?:you|in|the (?:party|fun|table|others|crowd|gang)|everyone|you all)|accept|(?:be|get) there|make it|come|join(?! forces)|stop by|drop (?:in|by)|be coming|be attending|be joining)"
)
COMING = (
    r"(?:attending|showing up|turning up|rocking up|rolling (?:up|in)|pulling up|swinging (?:by|over|round)|popping (?:by|over|round)|coming (?:by|over|round|along|down|through)|joining(?: you| in)?|partaking|participating)"
)
_WILL = r"(?:will|shall|can|am going to|are going to|going to|intend to|mean to|plan to|expect to|am able to|are able to|am set to|are set to|would be able to|have decided to|am bound to|am sure to|do)"
_WISH = r"(?:should|would) (?:be )?(?:very |so |most |only |really |dearly )*(?:like|love|glad|delighted|happy|honou?red|pleased|enchanted|thrilled)"
_HERE = r"(?= $| ,| with| for| and| around| at| on| too| in| then| there| -| \()"
START = r"(?:^|(?<= ,)|(?<= but)|(?<= and)|(?<= so)|(?<= yes)|(?<= ok)|(?<= sorry)|(?<= no)|(?<= -)) "

YES = (
    (r"^ (?:my |our )?(?:attendance|presence|place|participation) (?:is )?(?:hereby )?confirmed\b", 0.9),
    (r"\b(?:turn|change|make|switch|upgrade) (?:my|our|that|the) (?:maybe|perhaps|no|question mark) (?:in)?to (?:a |an )?(?:firm |definite )?yes\b", 0.93),
    (r"\b(?:absolutely |definitely |so |totally |would )?not (?:going to miss|gonna miss|missing) (?:it|this|that|out)\b(?!.* but\b)", 0.88),
    (r"^ (?:please )?(?:you may |you can |do |kindly |just )?(?:put|note|write|add|take) (?:my|our) names? (?:down|on (?:the|your) list)(?: (?:too|as well|please|then|for (?:it|this)))*(?= $)", 0.88),
    (r"\b(?:i|we) (?:am|are) (?:so |totally |very )*(?:down|up|on) for (?:the |this |your )?(?:potluck|supper|dinner|party|feast|it|this)(?= $| ,| on| this| saturday| sunday| friday)", 0.9),
    (r"^ (?:ooh |oh |ah |aw |alright |all right |ok )*go on then(?= $| ,)", 0.85),
    (rf"\b{WE} {ADV}{_WILL} {ADV}{COME}{_HERE}", 0.93),
    (rf"{START}{ADV}(?:will|shall|can|going to) {ADV}{COME}{_HERE}(?! (?:a|the) )", 0.88),
    (rf"\b{WE} {ADV}(?:am|are|will be|shall be) {ADV}{COMING}{_HERE}", 0.92),
    (rf"^ {ADV}{COMING}(?: (?:at|around|by|about) [a-z0-9]+)?(?= $| ,| with (?:my|the|a) | for (?:sure|this|it)| too| for the (?:supper|potluck|party|dinner))", 0.82),
    (rf"\b{WE} {_WISH} to (?:accept|{COME}){_HERE}(?!.*\bbut\b)", 0.88),
    (rf"^ (?:i |we )?(?:gladly|happily|gratefully|joyfully|humbly) accept\b|\b{WE} {ADV}accept\b(?! that)|^ (?:pleased|happy|delighted|honou?red|glad) to accept\b|^ accept(?:ed|ing)?(?= $| with)", 0.92),
    (r"^ (?:(?:it|that) (?:will|would) be |what )?(?:a |an |our |my |the )?(?:great |real |true |sincere |much |such a )?(?:pleasure|honou?r|delight)(?: to (?:come|join|attend|accept)(?: [a-z]+)?)?(?= $| ,)", 0.82),
    (r"^ (?:yes ,? ?)?with (?:(?:much|great|the greatest|all|pure|the utmost|sincere|a lot of) )?(?:pleasure|joy|delight)\b|\b(?:i|we) (?:go|come|am going|are going) with (?:pleasure|joy)\b", 0.9),
    (r"\b(?:nothing|no(?:body| one)) (?:will|would|could|can|shall)(?: not)? (?:keep|stop|hold|drag) (?:me|us)(?: away| from)?\b", 0.88),
    (rf"\b(?:{WE} )?(?:would|will|could|shall|do) not (?:want to |dare |dream of |think of |dare to |even think of )?(?:miss|missing|staying (?:home|at home|away)|skip|skipping) ?(?:it|this|that|out|your|the|for|home|$)", 0.9),
    (r"\b(?:you )?(?:can|may|should|could|shall) (?:count|rely|depend|bank|reckon|plan) (?:up)?on (?:me|us|our coming|my coming)(?= $| ,| being| to (?:be|come)| coming)", 0.92),
    (r"^ (?:please )?(?:you (?:can|may|should) )?(?:expect|have|count|reckon|seat|book|slot|deal|write|chalk) (?:me|us)(?: (?:in|down|there|present|up|with you|as coming|as present|among))*(?= $| ,| for (?:the|this|it)| then)", 0.85),
    (r"^ (?:i |we )?(?:am |are )?(?:so |totally |all |already |definitely |absolutely )*(?:there|in for (?:it|this)|on for (?:it|this)|off work(?: that (?:day|weekend))?)(?= $| ,(?! (?:is|are)))(?<! there)(?! but)", 0.82),
    (rf"\b{WE} (?:am|are) {ADV}there(?= $| ,| with| for it| like)|^ (?:so|totally|already) there(?= $)", 0.88),
    (r"\b(?:so|then|therefore|hence) (?:it is |that is |i say |put me down as |that makes it )?(?:a )?yes(?= $| ,)", 0.85),
    (r"(?:^|(?<= , )|(?<= then ))(?:in|yes)(?= $)", 0.82),
    (r"\b(?:do|would|did) not (?:you |anybody |anyone |anybody )?(?:dare |even think of |think about |go )?(?:to )?(?:count|rule|write|cross|strike|leave|counting|leaving|ruling) (?:me|us) (?:out|off)\b|\b(?:just )?(?:you )?try (?:and|to) (?:stop|keep) (?:me|us)(?: away| out)?\b", 0.88),
    (r"\b(?:count|rely|bank) (?:up)?on (?:me|us)(?= $)|\bcount (?:me|us) in(?= $)", 0.86),
)  # fmt: skip

_THAT = r"(?:that|this|the same|the whole) (?:weekend|week|day|night|date|evening|afternoon|saturday|sunday|friday|month)|then|on the day"
_AWAY = (
    rf"(?:i|we) (?:will be|am|are|am going to be|are going to be|have to be|shall be) (?:[a-z]+ )??(?:in|at|off to|up in|down in|over in|away|out of|on a|on my|on our) (?:[a-z']+ ){{0,4}}?(?:{_THAT})"
)
NO = (
    (rf"\b(?:sorry|afraid|sadly|unfortunately|alas|regret|pity|shame|gutted)\b.*\b{_AWAY}(?= $| ,| so| and| for)", 0.9),
    (rf"\b{_AWAY}(?: ,)? (?:sorry|sadly|unfortunately|so no|alas)\b", 0.9),
    (r"\bno need to (?:save|keep|set|hold|book|lay|leave|reserve) (?:me|us|a (?:seat|place|plate|chair|spot) for (?:me|us))(?: (?:a|any|some) (?:seat|place|plate|chair|spot)s?)?\b", 0.88),
    (r"\b(?:that|this|the) (?:weekend|day|date|week|evening|night|time|saturday|sunday|friday|[0-9]{1,2}(?: ?(?:st|nd|rd|th))?) is (?:a |an )?(?:total |complete |bit of a )?(?:write[- ]?off|no[- ]go|non-?starter|nightmare|impossible|bust)(?: for (?:me|us|my lot))?(?= $| ,| i am| sorry| sadly)", 0.86),
    (r"^ (?:(?:sorry|ah|aw|oh|argh|ugh|hmm|gutted|damn|alas|sadly|,) )*(?:no|nope|nah)(?: ,)? (?:sorry ,? ?)?(?:that|it) is (?:actually |also |the (?:day|weekend|night) (?:of|we|i) )?(?:my|our|the (?:kids|school)|her|his)(?: |'s )(?!(?:turn|dish|favou?rite|answer|name|number|seat|plate|kind))", 0.86),
    (r"^ (?:yes ,? ?)?(?:nah|no) ?,? ?(?:can not|sorry|will not)\b|^ yes ,? ?(?:nah|no)(?= ,| $)", 0.85),
    (r"\b(?:can not|could not|did not|do not|will not) (?:get|have|manage to get|be able to get) (?:the |that |any )?(?:time|day|night|afternoon|evening|saturday|sunday|weekend)(?: off| free)(?= $| ,| from| then| that)", 0.86),
    (rf"\b{WE} {ADV}(?:can|could|will|shall|would|do) not {ADV}(?:be able to |get to |manage to )?{COME}{_HERE}", 0.95),
    (rf"{START}{ADV}(?:can|could|will|shall|would) not {ADV}(?:be able to )?{COME}{_HERE}", 0.93),
    (rf"(?:{START}|\b{WE} ){ADV}(?:am |are |is )?not {ADV}(?:going to|gonna) {ADV}(?:be able to |make it |get to )?(?:{COME}|make it)\b", 0.93),
    (rf"\b(?:unable to|not able to|in no position to|prevented from|kept from|hindered from) (?:{COME}|attending|coming|joining|being)\b", 0.92),
    (r"\b(?:it is|that is|it will|will it|this is) (?:not|im)(?: be)? ?(?:possible|feasible) (?:for (?:me|us) )?to (?:come|join|attend|make it|be there)\b|\bimpossible for (?:me|us)\b", 0.92),
    (r"\b(?:i|we) (?:must|have to|need to|will have to|am forced to|am obliged to|beg to|ask to) (?:ask to )?(?:be excused|excuse (?:myself|me|us|ourselves)|bow out|stay (?:home|at home|away)|give it a miss|refuse)\b|\bplease excuse (?:me|us|my absence|our absence)\b|^ excuse (?:me|us) (?:please )?this time\b", 0.9),
    (r"(?<! not)(?<! could)(?<! can)(?<! will)(?<! would)(?<! and)(?<! to)(?<! try) (?:keeps?|kept|keeping|will keep|holds?|prevents?) (?:me|us) (?:away|from (?:coming|attending|joining|being))\b", 0.85),
    (r"\b(?:i|we) (?:do )?regret(?:fully)? (?:that )?(?:to (?:say|decline|inform)|(?:i|we) (?:must|can not|shall not|will not|am unable|are unable))\b|^ with (?:much |great |deep )?regret\b|^ regrets\b", 0.85),
    (rf"\b{WE} (?:can|could) not assist(?= $| ,| to| at| on| because)", 0.85),
)  # fmt: skip

MAYBE = (
    (r"\b(?:tomorrow|tonight|(?:by|on|after) [a-z]+day|next week|later|soon|then) (?:i|we) (?:will|should|shall|would) know(?: more| for sure| better)?\b", 0.86),
    (r"\bno (?:rsvp|answer|reply|promise|promises|decision)(?: from (?:me|us))? (?:yet|until|till|before)\b|\bput (?:me down as )?a question mark\b", 0.86),
    (r"^ yes(?: ,| \x00)? (?:also |and |or )?(?:no|maybe)\b.*\bwho knows\b", 0.86),
    (rf"(?:{START}|\b{WE} ){ADV}(?:may|might) or (?:may|might) not\b", 0.93),
    (r"\b(?:can not|could not|will not|do not want to|would rather not) (?:promise|commit|guarantee|be certain|decide|be sure|confirm)(?: (?:it|that|this|anything|fully))?(?: (?:yet|now|today|right now|at the moment|at this point|so far|until))?(?= $| ,| until| yet| but)", 0.88),
    (r"\b(?:it|that|this|all|everything|my answer) (?:all )?(?:hangs on|hinges on|is up to|turns on|rests on|rides on|depends)\b", 0.85),
    (r"^ (?:in principle|in theory|technically|on paper) (?:yes|in|i am in|we are in)\b", 0.85),
    (r"\b(?:provided|providing|supposing|subject to|conditional on|given that)\b(?=.*\b(?:come|join|attend|be there|in|yes|make it)\b)", 0.8),
    (r"\b(?:will|shall) know (?:[a-z]+ )?(?:on |by |after |before )?(?:mon(?:day)?|tue(?:s|sday)?|wed(?:s|nesday)?|thu(?:r|rs|rsday)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?|tonight|tomorrow|next|the [0-9]+)\b|\b(?:will )?(?:tell|say) (?:you|it to you) (?:on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day\b|\b(?:ask|try) me (?:again )?(?:on |in |after |closer)\b", 0.87),
    (r"\b(?:is|are) (?:still |just )*(?:being difficult|undecided|deciding|thinking it over|mulling)\b", 0.72),
)  # fmt: skip
