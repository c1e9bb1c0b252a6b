"""Answers of a few words that say yes, maybe or no only below the board or the question who comes: "add me", "got work",
"depends if I get off early". The whole sentence must be one of them, but for what softens it.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Answer
from planning.replies.intents import ReplyContext, SetAnswer
from planning.replies.text import Sentence

_LEAD = r"^ (?:(?:yes|no|ok|okay|oh|so|well|and|but|hey|man|hmm|sorry|sadly|unfortunately|afraid|i am afraid|honestly|actually|looks like|it looks like|think|i think|guess|i guess|,) )*"
_TAIL = r"(?: (?:,|sorry|sadly|unfortunately|this time|guys|all|everyone|folks|though|then|now|yet|still|for (?:me|us)|from (?:me|us)|i am afraid|i guess|i think|indeed|really|too|as well|again|definitely|for sure|so|either|at all|after all|(?:that|this) (?:day|weekend|week|night|evening|time|date|one)|(?:on )?(?:saturday|sunday|friday|sat|sun)|all day|next time|please|of course))* $"
_COME = r"(?:come|make it|be there|attend|join(?: you| in| us)?|be coming|do it|do this|be in|go)"
_KID = r"(?:(?:my|our|the|his|her) )?(?:kids?|children|son|daughter|girls?|boys?|twins|eldest|oldest|youngest|wife|husband|partner|mother|father|family)(?:'s| is)?"
_EVENT = r"(?:wedding|recital|game|match|tournament|graduation|reunion|exam|exams|funeral|party|birthday(?: party)?|anniversary|concert|play|race|meet|practice|camp|appointment|shift|class|deadline|inspection|thing)"
_FORMS = (
    (Answer.YES, 0.88, (
        r"(?:you know it|you betcha|you bet|you got it|count on it|yessir|yes (?:sir|ma'am|maam|chef|boss|captain|indeed|indeedy)|y|yep|si|oui|ja|da|aye(?: aye)?)",
        r"(?:i |we )?(?:can|could) do (?:that|this|the|it|saturday|sunday|friday|sat|sun|then|that one)(?: (?:day|date|one|evening|night|time|weekend))?",
        r"(?:i |we )?(?:would |should )?(?:just |really |so )?love to|(?:i am |we are |am |are )?(?:more than )?(?:happy|glad|delighted|thrilled) to(?: come| be there| join)?",
        r"(?:please )?(?:sign|put|add|mark|note|write|pencil|book|lock) (?:me|us|my name|our names?)(?: (?:up|down|in|on|to|on to))*(?: (?:the|your|this) (?:list|sheet|board|roll))?(?<!pencil me in)(?<!pencil us in)",
        rf"(?:i am |we are |am )?(?:planning|plan|intending|intend|expecting|expect|aiming|set|due) (?:on (?:it|coming|being there|attending)|to {_COME})|that is the plan|(?:i |we )(?:will )?make it happen",
        r"(?:i am |we are |am )?(?:totally |all |completely |definitely )?(?:available|free|clear)(?: (?:that|then|all|to come))*|(?:we are )?all clear(?: (?:on|at) (?:our|my) (?:end|side))?|nothing on",
        r"(?:me|us|i am|we are) (?:in|up for it|on)|present|attending|accounted for|all (?:of us )?(?:in|coming|there)",
        r"(?:like |as if )(?:i|we) would (?:ever )?miss (?:it|this|that)|(?:am |i am |we are )?not (?:going to (?:be )?|about to )?miss(?:ing)? (?:it|this|that|this one|out)|(?:you )?could not keep (?:me|us) away|no (?:chance|way) (?:i|we) would miss (?:it|this)",
        r"(?:my |the )?(?:work|boss|job|office) (?:is )?(?:let|lets|letting|gave|gives) (?:me|us) (?:off|go|out|the day(?: off)?)|(?:i |we )?(?:got|have|swapped for|took) (?:the|my) (?:day|night|evening|weekend|shift) off",
        r"great ,? ?(?:i |we )?(?:will )?see you (?:there|then|all|soon|saturday|sunday)(?: there| then)?",
    )),
    (Answer.NO, 0.88, (
        rf"(?:n|nah|no|nope) ?,? ?(?:i am |we are )?good|negative|hard (?:no|pass)|(?:a )?(?:firm|solid|sad|big|polite) no|no luck|no dice|no bueno|out of luck|not (?:able|gonna|going) to(?: {_COME})?|unable to|ain't (?:coming|going)|(?:is|am|are) not coming",
        r"(?:am |i am |we are |going to |gonna |i will |we will |have to |will have to |will |i have to |must )*(?:pass(?:ing)?(?: on (?:this|it)(?: one)?)?|skip(?:ping)?(?: (?:it|this|this one))?|sit(?:ting)? (?:it|this|this one|one) out|bail(?:ing)?|flak(?:e|ing)|cancel(?:ling|ing)?|drop(?:ping)? out|back(?:ing)? out|bow(?:ing)? out|duck(?:ing)? out|staying (?:home|in|away)|stay (?:home|in))",
        r"(?:skip|cancel|uncount|scratch|remove|drop|leave out) (?:me|us)|do not (?:count|expect|wait for|include|rely|bank)(?: on)? (?:me|us)",
        r"(?:something|stuff|life|work|a thing) (?:has )?(?:came|come|comes|got) (?:up|in the way)|(?:other|previous|prior|already|have|i have|we have|got|already have|we already have|i already have|existing) (?:plans|commitments?|engagements?)(?: already)?",
        rf"(?:(?:i|we) )?(?:have got|have|got|there is)(?: a| an| another| my| our| this| to)? (?:{_EVENT}|work|plans|company|guests|visitors)|(?:i |we )?(?:work|am working|are working|working) (?:saturdays|sundays|weekends|fridays|nights|then|double|late)",
        rf"{_KID} (?:has|have|got|with)? ?(?:a |an |another |his |her |their )?(?:[a-z]+ )?{_EVENT}",
        r"(?:(?:i|we|all of us) )?(?:(?:am|are|have|got|down with|came down with|caught|in bed with|have got|feeling|both|all|not|is) )*(?:the |a |an |so |very |too |pretty |really )*(?:sick|ill|flu|covid|unwell|contagious|stomach bug|tummy bug|norovirus|fever|feeling well|feeling great|feeling good|feeling up to it|up to it|poorly|under the weather)(?: ,| and| so)*(?: (?:i am |we are |am |will be |going to |gonna |have to |i will |we will )*(?:staying|stay|be staying) (?:home|in|at home|put|in bed|away))?",
        r"(?:i |we )?(?:can not|could not|did not|do not have|have no|no|without a) (?:get |find |have )?(?:a |any )?(?:baby-?sitter|sitter|ride|car|lift|childcare|time|transport)(?: so no)?",
        r"(?:it is |that is |this is )?(?:too|very|a bit|so) (?:far|late|early|much|tired|busy|swamped|expensive|hectic)|(?:i am |we are )?(?:too |so |way too )?(?:swamped|tired|exhausted|busy|wiped|booked|double booked|spoken for)",
        r"(?:a |taking a |need a |have to take a )?rain ?check|(?:maybe )?(?:next|another) (?:time|year|one|month)",
        r"(?:you |y'all )?(?:all |guys |folks |everyone |lot )*have (?:fun|a (?:good|great|lovely|nice) (?:one|time))(?: (?:without (?:me|us)|there|all|everyone|guys))*",
        r"(?:i |we )?would (?:come |be there )?if (?:i|we) could(?: (?:come|make it|be there))?|(?:i |we )?wish (?:i|we) could(?: (?:come|make it|be there))?",
        r"(?:i |we )?(?:do not|really do not) think so|(?:i |we )?(?:do not|will not|can not) (?:see|think) (?:it|that) (?:happening|will work|working)|not happening",
        r"(?:it )?(?:does|do|is) not (?:look(?:ing)?|seem|sound|appear)(?:ing)? (?:good|great|likely|promising|hopeful|like (?:it|that|i can|we can|i will|we will|i am going to|we are going to)(?: be able to)?(?: (?:make it|come|be there|happen|work(?: out)?))?)|not looking (?:good|great|likely|promising)",
        r"(?:that|this|the|saturday|sunday|it|its|that is)(?: (?:day|date|time|weekend|one|is))*(?: (?:is|are))?(?: (?:no good|not good|bad|no use|impossible|out|not (?:going to )?work(?:ing)?|terrible))",
        r"(?:i |we )?(?:broke|sprained|twisted|hurt|threw out) (?:my|our|the) [a-z]+",
        r"(?:i |we )?(?:(?:am|are|will be) )?(?:in|at|off to|flying to|driving to) (?!bed|charge|touch|it|time|on|all)[a-z]+(?: [a-z]+)? (?:that|this) (?:day|weekend|week|night|evening|whole week|time)",
    )),
    (Answer.MAYBE, 0.88, (
        r"(?:very |most |quite )?(?:probably|likely|prob)(?: (?:yes|in|coming|there))?",
        rf"(?:i |we )?(?:might|may|could)(?: (?:be able to|well|just))*(?: {_COME})?|could be|(?:i am |we are |am )?(?:hoping|hope|trying|try|going to try|gonna try|will try|want|kind of want|would like) to(?: (?:{_COME}|make it work|make (?:it|this) work|swing it))?",
        r"(?:i |we )?(?:got to|have to|need to|must|gonna|going to|let me|should|am|are|is|still|just|now)(?: (?:just|still|first|to))*(?: )?(?:ask(?:ing)?|check(?:ing)?(?: with)?|see(?: with)?|talk(?:ing)? to|confirm(?:ing)?(?: with)?|run(?:ning)? it by|wait(?:ing)? (?:on|for|to hear from))(?: (?:my|our|the|with my|with our|with the) [a-z]+(?: [a-z]+)?)?(?: (?:first|about it))*",
        r"(?:only |yes |in |maybe |coming |sure )?(?:,|but )?(?:only )?(?:if|as long as|provided|unless) (?:i|we|my|our|the (?:kids?|baby|car|boss|weather|sitter|doctor|roads?)) (?!.* (?:will|would|bring|bringing|make|making|win|were|was|,) )[a-z ]{3,40}",
        r"(?:it |that |this )?(?:all )?(?:depends(?: on)? (?:if|whether)|depends how|depending on|depends on) (?!.* (?:bring|bringing|making) ).{3,60}",
        r"(?:i am |we are |am |are )?(?:still |just )*(?:figuring (?:it|things|that) out|deciding|thinking(?: about it)?|working (?:it|things) out|sorting (?:it|things) out|not decided|undecided|in limbo|up in the air|mulling)(?: (?:it over|about it))?",
        rf"(?:i am |we are |am )?(?:still )?(?:trying|working) (?:to (?:get|find|swap|switch|arrange|move|figure|work) .{{2,40}}|on it)|(?:i am |we are |am )?(?:hoping|praying) .{{0,40}}{_COME}",
        r"(?:a )?(?:soft|tentative|weak|cautious|hopeful|likely|probable|possible|provisional) (?:yes|no|maybe)|[1-9][0-9] ?(?:percent|pct|%)(?: (?:yes|sure|chance|there|likely|in))*",
        r"(?:i |we )?(?:think|believe|hope) (?:i|we|so)(?: (?:can|will|could|should))?(?: (?:make it|come|be there))?",
        r"maybe ,? ?(?!.* (?:bring|bringing|make|making|a |some |the ))[a-z ]{3,40}(?:game|work|shift|sick|busy|away|sitter|trip|match|practice|recital|late|know|sure|see)",
        r".{0,40} ?,? ?(?:see|will see|we will see|i will see|depends) how (?:i|we|it|things|the day) (?:feel|feels|go|goes|am|are|look)s?(?: .{0,20})?",
    )),
)  # fmt: skip
_COMPILED = tuple(
    (answer, sure, re.compile(f"{_LEAD}(?:{'|'.join(f'(?:{form})' for form in forms)}){_TAIL}"))
    for answer, sure, forms in _FORMS
)
LONGEST = 14
"""A longer sentence is read by what it says elsewhere."""


def read_short(sentence: Sentence, context: ReplyContext) -> SetAnswer | None:
    """The writer's answer, where the whole sentence is one below the board."""
    if sentence.question or len(sentence.tokens) > LONGEST:
        return None
    if context.asked != "answer" and (context.replying_to != "board" or context.own_promises):
        return None
    for answer, sure, pattern in _COMPILED:
        if pattern.match(sentence.text):
            start, end = sentence.span(0, len(sentence.tokens))
            return SetAnswer(context.writer, answer, start=start, end=end, confidence=sure)
    return None
