"""A party counted off person by person: "mi mujer, los dos peques y yo", "nos apuntamos 2 mayores y 3 gurises", "voy con Juli"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning.replies.intents import ReplyContext
from planning.replies.spanish.lexicon import PLAIN, words
from planning.replies.spanish.members import LETTER, Group, group_at
from planning.replies.spanish.names import known_dish
from planning.replies.spanish.spelling import known
from planning.replies.spanish.verbs import any_form, finite
from planning.replies.text import Sentence

_FILL = r"(?: (?:yo|nosotros|nosotras|todos|tambien|ahi|alli|alla|aca|seguro|ya|los dos|juntos|sola|solo|feliz|felices|encantad[oa]s?|mañana|a ir|a ser|a estar|en total|pues|entonces|al final|por ahora|de momento|como|unos|la familia|gustos[oa]s?|que|al (?:asado|convite|evento|convivio|almuerzo)|a la (?:fiesta|cena|comida|reunion|barbacoa|parrillada|carne asada|junta|juntada)|el (?:sabado|domingo|viernes|jueves|lunes)|asistencia|mi asistencia|nuestra asistencia|sin falta|puntual(?:es)?|el dia|ese dia|en|(?:tipo|a|sobre|como a|despues de|a eso de|desde|hacia|pasadas) (?:las? )?[0-9:]+(?: y media| de la (?:tarde|noche)| pm)?))*"
_US = rf"(?:{any_form('come', '1p')}|iremos|vendremos|asistiremos|acudiremos|caeremos|llegaremos|somos|seremos|seriamos|estaremos|estamos|vamos a (?:ir|ser|estar)|queremos ir|podemos ir|nos (?:apuntamos|sumamos|anotamos|prendemos|unimos|vemos|acoplamos|enganchamos)|confirmamos|confirmad[oa]s|apunt[a-z]*nos|anot[a-z]*nos|contad con|cuent[ae]n? con|conta con|en total|total|de (?:mi|nuestra) (?:parte|familia|casa)|por (?:mi|nuestra) parte|familia|quedamos)"
_I = rf"(?:{any_form('come', '1s', 'f1')}|estare|estoy|voy a (?:ir|estar)|quiero ir|puedo ir|me (?:apunto|sumo|anoto|prendo|uno|acoplo|engancho|presento|tienen|tendran|teneis)|confirmo|confirmad[oa]|apunt[a-z]*me|anot[a-z]*me|cont[aeo][a-z]*me|agreg[a-z]*me|contad conmigo|cuent[ae]n? conmigo|conta conmigo|conmigo|(?:ir|ire|voy|caigo|llego)|si|claro|claro que si|dale|presente|listo|va|sale|por supuesto|obvio|perfecto|vale|ok|(?:ahi|alli|alla) (?:estare|nos vemos|voy|estoy)|cuent[ae]n?|contad|conta)"
_BEFORE_US = re.compile(rf" {_US}{_FILL}(?: ?[,:])? $")
_BEFORE_I = re.compile(rf" {_I}{_FILL}(?: ?[,:])? $")
_OPEN = re.compile(
    rf"(?:^ (?:(?:si|claro|dale|ok|vale|pues|va|bueno|perfecto|y|yo|{_I}|{_US}) ?[,:]? )*| [,:.] | y | que | pero | entonces | porque | asi que | final )$"
)
_MORE = frozenset((",", "y", "e", "mas", "+", "&", "(", ")", "/", "con", "ademas", "tambien", "junto"))
PREDICATE = re.compile(
    r"^ (?:que )?(?:(?:tambien|los dos|ambos|ambas|todos|ademas|las dos|los 2|las 2) )*(?:somos|es|son|soy|tiene|tienen|tenemos|cumple|cumplen|no|hace|hacen|esta|estan|estamos (?!ahi|alli|alla|list)|prefiere|prefieren|odia|odiamos|quiere|lleva|trae|prepara|pone|dice|dijo|dicen|viene|vienen|va|van|puede|se|nos casamos|trabaja[a-z]*|viv[a-z]+)(?= )"
)


_BESIDE = re.compile(rf" (?:{_US}|nosotr[oa]s){_FILL} [0-9]{{1,2}}(?: grandes| mayores| adult[oa]s)? (?:y|mas|\+) $")
""" "Somos tres y un bebé": told beside the number, not in it."""


@dataclass(frozen=True)
class Run:
    """Persons told one after the other: tokens `first` up to, not including, `last`."""

    first: int
    last: int
    groups: tuple[Group, ...]
    names: int
    me: bool

    @property
    def sure(self) -> bool:
        return all(g.sure for g in self.groups)


def runs(sentence: Sentence, context: ReplyContext) -> list[Run]:
    """The runs of persons in a sentence."""
    said = [t.plain for t in sentence.tokens]
    found = []
    i = 0
    while i < len(said):
        run = _run_at(sentence, said, i, context)
        if run is None:
            i += 1
        else:
            found.append(run)
            i = max(run.last, i + 1)
    return found


def _run_at(sentence: Sentence, said: Sequence[str], i: int, context: ReplyContext) -> Run | None:
    first, at, last = i, i, i
    told: list[Group] = []
    names, me = 0, False
    while at < len(said):
        if at > first:
            joined = at
            while (
                joined < len(said)
                and said[joined] in _MORE
                and not (said[joined] == "mi" or said[joined : joined + 2] == ["con", "quien"])
            ):
                joined += 1
        else:
            joined = at
        if joined >= len(said):
            break
        if said[joined] in ("yo", "menda", "conmigo") or (
            said[joined] in ("un", "una", "su", "este", "esta")
            and said[joined + 1 : joined + 2] in (["servidor"], ["servidora"])
        ):
            if joined == at and at > first and last and said[at - 1] not in _MORE:
                break
            me, at = True, joined + (1 if said[joined] in ("yo", "menda", "conmigo") else 2)
            last = at
            continue
        group = group_at(said, joined, bool(told))
        if group is not None and not (joined == at and at > first and not group.letters):
            group = known_ones(_numbered_behind(said, group), said, context)
            told.append(group)
            at = last = group.last
            continue
        brought = said[first - 1 : first] == ["con"] and _BEFORE_I.search(sentence.text[: sentence.offset(first - 1)])
        if (
            (me or brought or context.asked in ("people", "party"))
            and said[joined] in ("mi", "nuestra", "nuestro")
            and _somebody(said, joined + 1)
        ):
            names, at = names + 1, joined + 2  # "yo y mi hembrita": whoever that is
            last = at
            continue
        if (joined > at or at == first) and _stranger(sentence, joined, context):
            names, at = names + 1, joined + 1
            while at < len(said) and sentence.tokens[at].raw[:1].isupper() and _stranger(sentence, at, context):
                at += 1  # a name of two words
            last = at
            continue
        break
    if not told and not names:
        return None
    return Run(first, last, tuple(told), names, me)


def _numbered_behind(said: Sequence[str], group: Group) -> Group:
    """ "Mis hijas 2", "los niños (3)": the number told behind."""
    if group.sure or not group.plural:
        return group
    i = group.last
    while i < len(said) and said[i] in ("(", ",", "que", "son", ":"):
        i += 1
    if i >= len(said) or not said[i].isdecimal() or not 1 <= int(said[i]) <= 9:
        return group
    after = said[i + 1] if i + 1 < len(said) else "."
    if (i == group.last or said[i - 1] in ("(", "son")) and after in (")", ",", ".", "y", "yo"):
        word = said[group.last - 1]
        letter = words("group").get(word, words("kin").get(word, "a"))[-1:].lower()
        return replace(group, letters=(letter,) * int(said[i]), sure=True, last=i + 1 + (after == ")"))
    return group


def known_ones(group: Group, said: Sequence[str], context: ReplyContext) -> Group:
    """ "Los tres chicos" of a party with three minors are those, whatever their ages."""
    if context.party is None or "a" in group.letters or said[group.first] not in ("los", "las", "mis"):
        return group
    own = [x for x in "tcdi" for _ in range(getattr(context.party, LETTER[x]))]
    plain = group.letters and not any(w.isdecimal() for w in said[group.first + 2 : group.last])
    return replace(group, letters=tuple(own)) if plain and len(own) == len(group.letters) else group


def _somebody(said: Sequence[str], i: int) -> bool:
    """Whether the word behind "mi" may be a person: no dish, no verb, nothing that is one's own otherwise."""
    if i >= len(said) or not said[i].isalpha() or len(said[i]) < 4:
        return False
    word = said[i]
    return known_dish(word) is None and not any(
        word in words(r) for r in ("head", "plain", "stop", "nofood", "unit", "vague", "lead", "tail")
    )


def _stranger(sentence: Sentence, i: int, context: ReplyContext) -> bool:
    """A name nobody here knows: a capital letter inside the sentence, and no word of ours."""
    token = sentence.tokens[i]
    if (
        not token.raw[:1].isupper()
        or (token.raw.isupper() and len(token.raw) > 1)
        or not token.raw.isalpha()
        or len(token.raw) < 3
    ):
        return False
    plain = token.raw.lower().translate(PLAIN)
    if known_dish(plain) is not None or plain in words("head") or plain in words("neutral") or plain in words("stop"):
        return False
    if plain in finite() or any(plain in name.casefold().translate(PLAIN).split() for _, name in context.guests):
        return False
    if i and sentence.tokens[i - 1].plain in (
        "familia",
        "los",
        "las",
        "señor",
        "señora",
        "doña",
        "don",
        "en",
        "de",
        "desde",
        "a",
        "san",
        "santa",
    ):
        return False
    if i == 0 and (known(plain) or len(sentence.tokens) < 3 or sentence.tokens[1].plain not in ("y", "e", ",")):
        return False
    before = sentence.tokens[i - 1].plain if i else ""
    return before in ("con", "y", "e") or not known(plain)


def counted(
    sentence: Sentence, context: ReplyContext, whole: int | None, *, asked: bool
) -> tuple[Run, dict[str, int]] | None:
    """Whom a run that stands for the writer's party comes to, by age group; None where none does. `whole` is how many
    they said they are in all: it tells how many the one group without a number are."""
    text = sentence.text
    for run in runs(sentence, context):
        before = text[: sentence.offset(run.first)]
        after = text[sentence.offset(run.last) - 1 :]
        extra = 0 if whole and _BESIDE.search(before) else _writer(run, before, after, asked=asked)
        if extra is None:
            continue
        counts = dict.fromkeys(LETTER.values(), 0)
        for group in run.groups:
            for letter in group.letters:
                counts[LETTER[letter]] += 1
        counts["adults"] += run.names + extra
        vague = [g for g in run.groups if not g.sure]
        if vague:
            rest = (whole or 0) - sum(counts.values())
            alone = len(run.groups) == 1 and not run.me  # "vamos con los chicos, 4": who is "we"?
            if len(vague) > 1 or vague[0].letters or rest < 1 or alone:
                continue
            counts[LETTER[vague[0].kind]] += rest
        elif not run.names and not any(g.letters for g in run.groups):
            continue
        return run, counts
    return None


def told_of(sentence: Sentence, context: ReplyContext) -> bool:
    """Whether the writer's run of persons is told of in another way than who comes: "mi esposo y yo no podemos"."""
    return any(
        run.me and PREDICATE.match(sentence.text[sentence.offset(run.last) - 1 :]) for run in runs(sentence, context)
    )


def _writer(run: Run, before: str, after: str, *, asked: bool) -> int | None:
    """How many the writer adds to those told: 1, or 0 who is among them; None where the run is no party of theirs."""
    crowd = any("a" in g.letters and not g.own and not g.kin for g in run.groups)
    if run.me:
        opened = (
            _OPEN.search(before) or _BEFORE_US.search(before) or _BEFORE_I.search(before) or before.endswith(" con ")
        )
        return 1 if opened and not PREDICATE.match(after) else None
    if before.endswith(" con "):
        if re.search(r" (?:cuent[ae]n?|contad|conta) con $", before):
            return 0 if crowd else None
        led = _BEFORE_US.search(before[:-4]) or _BEFORE_I.search(before[:-4]) or before == " con "
        return 1 if led else None
    if PREDICATE.match(after):
        return None
    if _BEFORE_US.search(before):
        return 0 if crowd else 1
    if crowd and (_BEFORE_I.search(before) or before.endswith(" : ")):
        return 0
    if asked and _OPEN.search(before):  # "mi mujer y los dos niños": the writer goes without saying
        return (
            0
            if crowd
            or not all(g.own or g.kin for g in run.groups if "a" in g.letters)
            or run.names
            or "a" not in {x for g in run.groups for x in g.letters}
            else 1
        )
    return None
