"""How people tell what they cannot or will not eat: the forms of it, for `needs`."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.foods import ALLERGEN, DIET, DIETS, KIN, LIST
from planning.replies.english.lexicon import NUMBER, any_of

OF_THEM = r"(?: of (?:us|them|ours|whom|which|those|(?:the|our|my|us) (?:[0-9]{1,2}|two|three|four|five|six|seven|eight|guys|lads|lot|crew|gang|team|men|women|ladies|group|party|kids|girls|boys|children|adults|family|lot|[a-z]{3,}s)(?: of us)?))"
_FOR_US = rf"(?: for (?:us (?P<n7>{NUMBER})|(?:the )?(?P<n5>{NUMBER}|both|all)(?: of)?(?: us| them|(?: (?:of )?(?:my|our|the))? (?:{any_of('kins')}))|me|us))"
_IS = rf"(?:(?:my|our) [a-z]+ and i are|i and (?:my|our) [a-z]+ are|me and (?:my|our) [a-z]+ are|i am|we are|we are both|both of us are|all(?: [a-z]+)? of us are|i have been|{KIN} (?:is|are|has been)|(?P<n2>{NUMBER}){OF_THEM} (?:is|are)|(?:he|she) is|they are|am|being|as|who is|who are)"
NONE_FOR = re.compile(rf"^ (?:please )?no {LIST} for [a-z]+(?= $| ,)")
ME = re.compile(rf"^ (?:(?:just|only|and|also) )*(?:me|myself)(?: ,| :| -| \()? {LIST}(?= $| ,| and| \))")
GRADED = re.compile(
    rf" {LIST} \( (?P<how>(?:very |really |quite )?(?:severe|serious|bad|deadly|mild|light|slight|slightly|allergy|allergic|anaphylactic|anaphylaxis|epipen|intolerance|intolerant|life-threatening))(?: allergy)? \)"
)
"""Below the question for diets: "peanuts (severe), kiwi (mild)"."""
OF_MINE = re.compile(rf"^ (?:(?:and|also|yes|,) )*{KIN}(?: is| has|:| :|,| ,|-| -)+ {LIST}(?= $| ,| and| \()")
"""Below the question for diets: "my daughter: egg and milk"."""
DIET_RULES = (
    re.compile(rf" {_IS} (?:a |an |also |both |all |strictly |strict |a strict |now |vegetarian and |actually |still |mostly |lifelong |fully |completely )*{DIET}(?![a-z-])"),
    re.compile(rf" (?P<n>{NUMBER}|a|an|another|both|all){OF_THEM}?(?: is| are|,)?(?: a| an| strict| of whom)* {DIET}(?![a-z-])"),
    re.compile(rf" (?:i|we|he|she|they|who|{KIN}) (?:only |also |both )*(?:eats?|needs?|keeps?|follows?|wants|ha(?:ve|s) to eat|can only eat|must eat)(?: a)?(?: strictly| strict| mostly| mainly)? {DIET}(?: diet| food| meals)?(?![a-z-])"),
    re.compile(rf" {DIET}{_FOR_US}(?![a-z-])"),
    re.compile(rf"(?:^|(?<= ,)|(?<=\x00)|(?<= and)|(?<= so)) (?:(?:only|strictly|just|we are|yes|,) )*{DIET} (?:meat|food|meals?|diet)(?: (?:only|please|for (?:me|us)|here))*(?= $| ,)"),
    re.compile(rf" {DIET} for {KIN}(?= $| ,| and| please| too| as)"),
    re.compile(rf" {DIET} (?:{any_of('kin')}) (?:here|in tow|with us|at ours|over here)(?![a-z-])"),
    re.compile(rf" {DIET} (?:here|diet|in our family|in the family|household|over here|family)(?![a-z-])"),
    re.compile(rf" {KIN} ?,? (?:who is )?(?:a )?{DIET}(?= $| ,| and)"),
)  # fmt: skip
ALLERGY_RULES = (
    re.compile(rf" (?P<not>not )?(?:(?:severely|very|highly|deathly|seriously|mildly|slightly|also|all|both|badly|super|a bit|quite) )*allergic (?:to |against |of |for |with |from )(?:all |any |the |raw |cooked |both )*{LIST}"),
    re.compile(rf" {LIST}(?: proteins?)? (?:allergy|allergies|allergic)\b"),
    re.compile(rf" (?:allergy|allergies|allergic reaction|anaphylaxis|anaphylactic)(?: :| to| -|,| for| of| against| with| from)+ (?:all |any |the )?{LIST}"),
    re.compile(rf" (?P<epi>epipen|epi-pen|anaphylactic) (?:for|to|from) {LIST}"),
)  # fmt: skip
_REACTION = r"(?:(?:very |really |quite |so )?(?:bad|badly|severe|severely|allergic|terrible|terribly|nasty|strong|strongly|awful|horrible|violent|violently|anaphylactic|serious|seriously|life-threatening) )*"
REACTION_RULES = (
    re.compile(rf" (?:has|have|had|get|gets|got|having|with)(?: got)? (?:an? )?{_REACTION}reactions? (?:to|from|with|after) (?:eating |any |all |the )?{LIST}"),
    re.compile(rf" reacts? {_REACTION}(?:to|from|with) (?:eating |any |all |the )?{LIST}"),
    re.compile(rf" (?:swells?|swelling|blows?|puffs?|balloons?)(?: (?:right|all))?(?: up)?(?: like a [a-z]+)? (?:from|with|after|on|when (?:i|he|she) eats?) (?:eating |any )?{LIST}"),
    re.compile(rf" (?:goes?|went|going) into (?:anaphylactic )?shock (?:from|with|after|on) (?:eating |any )?{LIST}"),
    re.compile(rf" (?:gets?|comes? (?:out|up) in|breaks? out in|covered in) (?:an? )?(?:bad )?(?:hives|rash|rashes|spots|welts|eczema) (?:from|with|after|on) (?:eating |any )?{LIST}"),
)  # fmt: skip
INTOLERANCE_RULES = (
    re.compile(rf" {LIST} (?:intolerant|intolerance|sensitivity|sensitive|issues|problems|trouble|troubles)\b"),
    re.compile(rf" (?:intolerant|intolerance|sensitive|sensitivity) (?:to |of )(?:all )?{LIST}"),
)
_WHO = rf"(?:i|we|himself|herself|{KIN}|he|she|they|who(?! will)|both of us|(?P<n>{NUMBER}){OF_THEM}|(?<=, )(?P<n4>{NUMBER})(?! ,)|(?<=and )(?P<n6>{NUMBER})(?! ,))(?: ,)?"
AVOID_RULES = (
    re.compile(rf" {_WHO} (?:eat|eats|drink|drinks|have|has|take|takes) no {LIST}"),
    re.compile(rf" {LIST} (?:is|are) (?:a |an |strictly |absolutely |sadly )*(?:no-no|no no|no-go|no go|off limits|off-limits|off (?:the|my|our|his|her|their) (?:menu|plate|list|table|diet)|out of the question|out|forbidden|not allowed|not an option|poison|(?:big |hard |definite |firm |absolute )?no(?= (?:for|from) ))(?: (?:for|to|from) (?:me|us|{KIN.replace('?P<kin>', '?:')}))?"),
    re.compile(rf" {_WHO}(?: (?:also|really|both|all|just|still))? (?:can not|do not|does not|must not|will not|does not can|do not can|am not allowed|is not allowed|are not allowed|can never|should not|never)(?: to)? (?:eat|eats|have|do|tolerate|touch|touches|digest|take|stomach|handle|consume|drink|go near|chew|swallow|bite) (?:any |all |the |(?:anything|food|things|stuff) (?:with|containing|made with|made from|that has|that contains) (?:any )?)?{LIST}"),
    re.compile(rf" no {LIST}(?: in (?:the|our|my|any) (?:food|dishes|meal))?(?: please)?{_FOR_US}(?: and (?:my|our) [a-z]+)?(?![a-z-])"),
    re.compile(rf"^ (?:(?:sorry|also|and|but|oh|just|,|btw|fyi) )*(?:can not|must not|do not|never) (?:eat|have|do|touch|tolerate|stomach|digest) (?:any |all )?{LIST}(?= $| ,| so| sorry| at all| and| or| because| as | though)"),
    re.compile(rf" no {LIST} (?:for|near|around|anywhere near) (?:me|us|{KIN.replace('?P<kin>', '?:')}|one of us|(?:my|our) [a-z]+)"),
    re.compile(rf" {_WHO} (?:(?:also|have to|has to|need to|needs to|must) )*(?:avoid|avoids|stay off|stays off|keep off|stay away from|steer clear of|steers clear of|cut out|have cut out|has cut out|gave up|have given up|has given up)(?: all| any)? {LIST}"),
    re.compile(rf"(?:^|(?<= ,)|(?<= so)|(?<= but)|(?<= and)) (?:(?:also|sorry|still|just|really|,) )*(?:can not|do not|am not able to|not able to) (?:eat|have|do|tolerate|drink|touch|digest) (?:any |all |the )?{LIST}(?! for [0-9])"),
    re.compile(rf"^ (?:(?:am|also|still|currently|just) )*off (?:all |the )?{LIST}(?= $| ,| at the moment| for| right now| now| this)"),
    re.compile(rf" (?:none|neither) of (?:us|(?:my|our) (?:lot|family|kids|children|party|gang)) (?:(?:can|will|may|is allowed to|are allowed to) )?(?:eat|eats|touch|touches|have|has|drink|drinks) (?:any )?{LIST}"),
    re.compile(rf" {_WHO} (?:am|is|are) (?:completely |totally |currently |now |still )?off {LIST}"),
)  # fmt: skip
KILLS = re.compile(
    rf" {LIST} (?:(?:means?|equals|is|are|:|-|,) )?(?:straight |instant |a |trip |me |in |off )*(?:to )?(?:the )?(?:hospital|emergency room|er|ambulance|anaphylaxis|epipen|epi-pen)(?: time| trip| territory)*(?= $| ,| for (?:me|us|him|her|{KIN.replace('?P<kin>', '?:')}))(?: for (?:me|us|him|her|{KIN.replace('?P<kin>', '?:')}))?| {LIST.replace('?P<list>', '?P<list2>')} (?:could|can|will|would|might|makes?|has)? ?(?:kills?|hospitali[sz]es?|puts?|lands?|sends?) (?:me|us|him|her|them|{KIN}|(?:my|our) [a-z]+)"
)
SOMEBODY_AVOIDS = re.compile(
    rf" (?P<name>[^\W\d_][\w'-]*) (?:can not|does not|must not|will not|is not allowed to|can never|should not|avoids)(?: (?:eat|have|do|tolerate|touch|digest|take|drink))?(?: any| all)? {LIST}"
)
SOMEBODY_IS = re.compile(
    rf" (?P<name>[^\W\d_][\w'-]*) is (?:(?:a|an|also|strictly|strict|fully|completely|now) )*{DIET}(?= $| ,| and| but| so| by| too| now)"
)
KINS_BEFORE = re.compile(
    rf" (?:(?:(?:all|my|our|the) )*(?P<n>both|{NUMBER})(?: of)?(?: my| our| the)? (?:[a-z]+ )??(?:{any_of('kins')})|(?:my|our|the) (?:twins|parents|grandparents|in-laws|in laws))(?: (?:is|are|have|has|got|both|also|all|very|really|severely|badly|a|an|bad|severe))* ?$"
)
"""Several of the writer's before what they have: how many, where it was said."""
DISAGREES = re.compile(
    rf" {LIST} (?:(?:and|&) (?:i|me|we|us|{KIN}) (?:do|does|can) not (?:get along|get on|mix|agree)|(?:do|does) not (?:agree|sit well|sit right|go down well|like) (?:with )?(?:me|us|him|her|them|(?:my|our) [a-z]+)|(?:upsets?|bothers?|wrecks?|messes with|irritates?|bloats?|disagrees? with|plays? havoc with) (?:(?:my|our|his|her|their) (?:[a-z]+ )?(?:stomach|tummy|gut|guts|belly|digestion|skin)|me|us|him|her|them|(?:my|our) [a-z]+))(?![a-z])"
)
NO_DRINK = re.compile(r" (?:i|we) (?:do not|never) drink(?: (?:(?P<list>alcohol)|at all))?(?= $| ,| so| but| and)")
_MINE = rf"(?:me|myself|us|{KIN.replace('?P<kin>', '?:')})"
SPICY = re.compile(
    rf"(?:(?: (?:i|we|{KIN}|he|she|they)(?: really| also| just)?|^) (?:can not|do not|does not|can never|will not|must not|should not) (?:do|eat|eats|have|handle|take|like|stand|tolerate)| (?:no|not|nothing|nothing too|not too|not very)) (?:too |very |so |anything |any |things? |food )*(?:spicy|hot and spicy|chili heat)(?: food| foods| stuff| things| dishes)?(?= $| ,| at all| so | as | because | and | but | for )(?: at all)?(?P<list>)"
)
"""Who can't eat hot food."""
KOSHER_STYLE = re.compile(
    rf" (?:(?:i am|we are|he is|she is|they are|{KIN} (?:is|are)) )?(?:kosher|halal)(?:-| )(?:style|ish|adjacent|lite) ?,? ?(?:so |meaning |i e |just |basically )*(?:no|nothing with|without) {LIST}"
)
_BADLY = r"(?:swells?(?: right)? up|swell|puffs? up|reacts?(?: badly)?|break(?:s)? out|gets? (?:hives|a rash|very ill|really ill)|(?:is|am|are) (?:very |badly |severely |highly )*allergic(?! to)|has (?:an? )?(?:[a-z]+ )?(?:allergy|epipen|reaction)|carries an epipen|ends? up in (?:the )?(?:hospital|er)|can not breathe|stops? breathing|goes into shock)"
BECAUSE = re.compile(
    rf" (?:no|avoid|without|nothing with|hold the|keep off(?: the)?|skip the|leave out(?: the)?) (?:any )?{LIST}(?: please| pls| in (?:it|them|anything))?(?: ,| -| :)?(?: because| as| since| cause| cos| for)? (?:{KIN}|i|he|she) {_BADLY}"
)
"""A food that is asked to be left out, and whose illness is the reason."""
TROUBLES = re.compile(
    rf" {LIST}(?: stuff| things| products| food| foods)? (?:gives?|causes?|is giving) (?:{_MINE}) (?:a lot of |so much |some |a |the |bad |terrible |real |stomach |tummy |gut |belly )*(?:trouble|troubles|problems?|issues|grief|hard time|runs|gas|bloating|cramps?|bother|aches?)(?![a-z])"
)
PROBLEM = re.compile(
    rf" {LIST}(?: stuff| products)? (?:is|are) (?:a |an |always |really |big |huge |real |such |bit of )*(?:problem|issue|trouble|nightmare|challenge)s? (?:for|with) (?:{KIN}|me|us|him|her)(?![a-z])"
)
OF_ME = re.compile(
    rf"^ (?:{DIETS} \( (?:me|myself|us|that is me|just me) \)|(?:just )?(?:me|myself)(?: :| -| ,)? {DIETS.replace('?P<diets>', '?P<diets2>')})(?= $| ,| and)"
)
BUT_NOT = re.compile(
    rf" {_WHO} (?:(?:can|do|will|am fine with|is fine with|are fine with) )?(?:eat |eats |do |have |has )?[^,\x00]{{1,40}} but (?:not|no|never) (?:eat |any )?{LIST}(?= $| ,| so| as| though)"
)
FREE_TOO = re.compile(rf"(?<=,) (?:and )?(?P<list>{ALLERGEN})(?: |-)free(?: for (?:me|us))?(?= $| ,)")
FREE = re.compile(
    rf"^ (?:(?:just|only|all|everything|it|keep|make) )*(?P<list>{ALLERGEN})(?: |-)free(?: (?:please|for me|for us|for {KIN.replace('?P<kin>', '?:')}|here|only|food|diet|if possible))*(?= $| ,| -| as| because)"
)
CELIAC = re.compile(
    rf" (?:i|{KIN}|he|she|one of us) (?:have|has)(?: got)?(?: a)? (?P<diet>celiac)(?: disease)?(?![a-z])"
)
FISH_NO_MEAT = re.compile(
    r" (?:(?:i|we) )?(?:(?:do |can |will )?eat |only eat )?(?:(?:(?:do|am|are|can) )?not (?:eat|eating) (?:the |any )?meat ,? ?(?:but |just |only |i eat |we eat )+(?:the )?fish|(?:(?:i|we) )?do not eat meat(?: ,)? (?:but|though) (?:fish|seafood) (?:is|are) (?:ok|okay|fine|good|all right)|vegetarian ,? ?(?:but|who|and|though) (?:i |we )?(?:do |also |still )*eats? (?:fish|seafood)|fish(?: is (?:ok|okay|fine|good))? ,? ?(?:but|and) (?:no|not|never|do not eat|not eat) (?:eat )?(?:any )?(?:other )?meat|no meat ,? ?(?:but|though) (?:(?:i|we) (?:do )?eat )?fish(?: is (?:ok|okay|fine|good))?)(?= $| ,| for| here| thanks| please)"
)
ILL_FROM = re.compile(rf" (?:get|gets|got)(?: [a-z]+)?? (?:ill|sick|hives|a rash|migraines) from (?:eating )?{LIST}")
MAKES_ILL = re.compile(
    rf" {LIST} (?:makes?|gives?|causes?|sends?|upsets?) (?:me|us|him|her|them|my [a-z]+) (?:[a-z]+ )??(?:swell|ill|sick|itch[a-z]*|hives|rash|throw up|vomit|bloated|migraines?|headaches?|close up|to hospital|reactions?|cramps?)"
)
AFTER_DIET = frozenset([",", "and", "&", "+", "but", "so", "here", "now", "too", "also", "for", "since", "by", "though", "please", "or", "as", "if", "with", "who", "this", "that", "then", "-", "(", ")", "/", "myself", "ourselves", "actually", "btw", "unfortunately", "not", "only", "plus", "just", "from", "in", "is", "are", "comes", "coming", "sorry", "these", "nowadays", "lately", "mostly", "usually", "again"])  # fmt: skip
PLAINLY_ILL = re.compile(r" (?:swell|itch[a-z]*|hives|rash|throw up|vomit|close up|to hospital)")
EXCEPT = re.compile(
    rf" (?:everything|anything|all|fine) (?:(?:is|are) (?:fine|good|ok|okay) )?(?:except(?: for)?|but(?: not)?|apart from|besides|other than|bar) (?:the )?{LIST}"
)
NO_AND_ALLERGY = re.compile(rf" no {LIST}(?= |$)(?=.* (?:allergy|allergic|allergies)\b)")
NOR = re.compile(rf"(?:\x00|,| and) (?:and |also |please )*(?:no|(?:can|could|may|must|should|will) not (?:have|eat|do|take|tolerate|touch)(?: any)?|(?:does|do) not (?:eat|do|tolerate|take|touch)(?: any)?|avoids?|skips?|stays? off) {LIST}(?: either| too| as well| for me| for us)*(?= $| ,)")
BESIDE = re.compile(
    rf"(?:\x00|,| and| also| plus| &) (?:(?:also|and|,|both|i am|we are|fully|strictly) )*{DIETS}(?: (?:too|also|as well|here|for me|for us|food|diet))*(?= $| ,| and)"
)
JOKE_ALLERGY = re.compile(
    rf" allergic to (?:the |your |my |all |doing |any |having )*(?:{any_of('nonallergen')})(?![a-z])"
)
ASIDE = re.compile(
    r" (?:(?:am|are|is|was|were|be|going|goes|gone|went|go) nuts (?:about|for|over|with)|(?:that is|this is|it is|you are|totally|absolutely|completely) nuts|(?:drives?|driving|drove) (?:me|us|him|her|them) nuts|(?:went|goes?|going) nuts"
    r"|seafood diet|see food(?: diet)?|(?:cut|cutting) (?:down|back) on [a-z]+|(?:butter|milk|egg)(?:ing|ed) (?:me|us|him|her|them|you) up|in a nutshell|walking on eggshells|a piece of cake|piece of cake|cup of tea|couch potatoe?s?|big cheese|small potatoes"
    r"|not (?:a |an )?(?:vegetarian|vegan|veggie)(?= but)"
    rf"|(?:{ALLERGEN}) (?:is|are) (?:fine|ok|okay|good|great|all right|alright|no problem)(?: (?:by|for|with) (?:me|us))?)(?= |$)"
)
"""Sayings with a food in them."""
ONE_EACH = re.compile(rf"(?:^|\x00|,| and| &)(?: ,| and)? (?P<n>{NUMBER}|a|an)(?: with| of us)? {LIST}(?= $| ,| and| &)")
"""Below the question for diets: "one celiac, one lactose"."""
LISTED = re.compile(rf"(?:,|and|&|\x00|\)) (?:and )?(?P<list>{ALLERGEN})(?: \( (?P<whose>[^()]{{1,20}}) \))?(?= $| ,)")
NONE = re.compile(
    r"^ (?:not that (?:i|we) (?:know of|am aware of|are aware of|can think of)|not (?:me|us|here|in (?:my|our) (?:house|family))|no|none|nothing|nope|nil|zero|all good|no needs|not really|nobody|none of us|(?:i|we) (?:will |can |do |both |all )*eat (?:anything|everything|owt|whatever|it all|most things|all)|(?:i am|we are) (?:easy|fine|all good|good))(?:(?: ,)? (?:all good|none|nothing|special|at all|for us|for me|here|needed|(?:i am|we are) (?:easy|fine|good)|but|not that (?:i|we) (?:know of|am aware of|are aware of|can think of)|(?:that )?(?:i|we) (?:know of|am aware of|are aware of|can think of)|as far as (?:i|we) know|known))*(?= $)"
)
ALLERGENS_ALONE = re.compile(rf"^ (?:just |only |no |yes(?: ,)? |also |and )*{LIST}(?: (?:for|-) {KIN})?(?= $| ,)")
BARE = re.compile(
    rf"^ (?:(?:everything|all food|all the food|food|our food|must be|has to be|needs to be|just|only|yes|i am|a|we are|strictly|strict|also|and|,|one|oh|all|both) )*{DIETS}(?: (?:only|here|for me|for us|one|too|also|as well|both of us|for both of us|myself|by the way|btw|tho|fyi|of course|now|nowadays|these days|though|this year|then|,|household|family|x (?P<n>[1-9])|since [a-z0-9]+(?: [a-z]+)?|again|for (?:life|years|ever|[0-9]+ years|now)|always|all my life|forever|as (?:always|ever|usual)|still|sorry|i am afraid))*(?= $| ,| and)"
)
REFUSED = re.compile(
    rf"^ (?:please ,? ?)?(?:no|without|nothing with|avoid) (?:any )?{LIST}(?: in (?:anything|it|the food|there))?(?: please)?(?= $| ,| as| because| or )"
)
NO_ALLERGY = re.compile(
    r" (?:(?:it|that|this) (?:is|was) (?:no|not an?)(?: real| actual| true)? allergy|not an? (?:real |actual |true )?allergy|no allergy (?:just|only|though))(?= )"
)
"""What is only not liked."""
BRINGS = re.compile(r" (?:bring|bringing|make|making|bake|baking|cook|cooking|serves?|for [0-9]) ")
LEADS = (
    "a",
    "an",
    "the",
    "severe",
    "bad",
    "nasty",
    "serious",
    "really",
    "very",
    "terrible",
    "food",
    "mild",
    "strong",
    "have",
    "has",
    "got",
    "horrible",
    "deadly",
    "life-threatening",
    "slight",
)
"""Words before an allergy which are part of telling it."""
BY_CHOICE = frozenset(("pork", "beef", "alcohol", "caffeine", "vegetarian", "chili", "sugar"))
"""What "no ..." in answer to the question for diets does not make an allergy of."""
AFTER_PEOPLE = re.compile(
    rf"(?: (?:me|us|i|we|people|persons|adults?|kids?|children)|(?<= coming)|(?<= in)|(?<= there)|(?<= yes)|(?<= joining)|(?<= come)) (?:, |- |– |but |: )(?:am |are |i am |we are )?(?:and |a |one |strictly |all |both )*{DIETS}(?: please| here)*(?= $| ,)"
)
THIRD = re.compile(r" (?:[a-z]+'s|someone|somebody|anyone|people) (?:is|are|has|have|was)?$")
ALL_OF_US = re.compile(
    r"^ (?:none of us|neither of us|we are all|all of us are|we all|the whole [a-z]+ (?:is|are))(?![a-z])| all (?:[a-z]+ )?of us are "
)
