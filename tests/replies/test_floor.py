"""The corpus as a floor: what is read today may get better, not worse (`python -m tests.replies.report` shows it)."""

from __future__ import annotations

from functools import cache

from tests.replies.corpus import Outcome, lines, outcome
from tests.replies.report import counts, interval

NEWEST = "corpus_ninth.tsv"
"""Written by somebody who has not seen the reader. At first sight any change was right in 0.782, a silent one in 0.840,
0.467 of what was said to the bot was understood, and 0.927 of the chatter was left alone; floors of its own, below."""
TENTH = "corpus_tenth.tsv"
"""Written by somebody who has not seen the reader. At first sight any change was right in 0.731 (0.769 once wrapping
and line breaks were read, still unseen), a silent one in 0.829 (0.840), 0.538 (0.568) of what was said to the bot was
understood, and 0.927 of the chatter was left alone. Every second line was mended by first; on the others, unseen,
those mends changed nothing."""
ELEVENTH = "corpus_eleventh.tsv"
"""Written by somebody who has not seen the reader. At first sight any change was right in 0.855, a silent one in 0.910,
0.744 of what was said to the bot was understood, and 0.963 of the chatter was left alone; then mended by."""
TWELFTH = "corpus_twelfth.tsv"
"""Written by somebody who has not seen the reader. At first sight 0.861, 0.915, 0.754 and 0.951; when the eleventh and
a thousand ordinary messages were mended by and it was still unseen, 0.907, 0.957, 0.842 and 0.951; then mended by."""
LATER = (NEWEST, TENTH, ELEVENTH, TWELFTH)


@cache
def outcomes() -> tuple[Outcome, ...]:
    """What is read of all files but the frozen ones."""
    return tuple(outcome(line) for line in lines())


@cache
def newest() -> tuple[Outcome, ...]:
    return tuple(outcome(line) for line in lines(NEWEST))


@cache
def tenth() -> tuple[Outcome, ...]:
    return tuple(outcome(line) for line in lines(TENTH))


@cache
def eleventh() -> tuple[Outcome, ...]:
    return tuple(outcome(line) for line in lines(ELEVENTH))


def test_the_corpus_is_large_and_a_third_of_it_is_chatter() -> None:
    chatter = sum(not o.line.expected for o in outcomes())

    assert len(outcomes()) >= 1200
    assert chatter / len(outcomes()) >= 1 / 3


def test_what_is_changed_silently_is_right_in_99_of_100() -> None:
    tally = counts(list(outcomes()))
    right, wrong = sum(tally["silent-right"].values()), sum(tally["silent-wrong"].values())

    assert right / (right + wrong) >= 0.99


def test_any_change_is_right_in_97_of_100() -> None:
    tally = counts(list(outcomes()))
    right, wrong = sum(tally["right"].values()), sum(tally["wrong"].values())

    assert right / (right + wrong) >= 0.97


def test_93_of_100_things_said_to_the_bot_are_understood() -> None:
    tally = counts([o for o in outcomes() if o.line.addressed])
    right, missed = sum(tally["right"].values()), sum(tally["missed"].values())

    assert right / (right + missed) >= 0.93


def test_no_allergy_is_changed_wrongly_without_a_question() -> None:
    told = ("needs", "noneeds", "gone")

    assert [o.line.text for o in outcomes() if any(kind in told for kind, _ in o.wrong & o.silent)] == []


def test_in_the_older_files_no_allergy_is_read_wrong() -> None:
    older = [o for o in outcomes() if o.line.file not in LATER]

    assert [o.line.text for o in older if any(kind in ("needs", "noneeds", "gone") for kind, _ in o.wrong)] == []


def test_the_interval_is_the_one_worked_by_hand() -> None:
    # 9 of 10, z = 1.96: centre (0.9 + 0.19208) / 1.38416, half 0.27475 / 1.38416 -> 0.596 to 0.982
    low, high = interval(9, 10)

    assert (round(low, 3), round(high, 3)) == (0.596, 0.982)


def test_the_newest_sentences_are_read_no_worse_than_they_were() -> None:
    tally, addressed = counts(list(newest())), counts([o for o in newest() if o.line.addressed])
    right, wrong = sum(tally["right"].values()), sum(tally["wrong"].values())
    silent, silent_wrong = sum(tally["silent-right"].values()), sum(tally["silent-wrong"].values())
    understood, missed = sum(addressed["right"].values()), sum(addressed["missed"].values())

    assert right / (right + wrong) >= 0.85
    assert silent / (silent + silent_wrong) >= 0.87
    assert understood / (understood + missed) >= 0.64


def test_the_tenth_sentences_are_read_no_worse_than_they_were() -> None:
    tally, addressed = counts(list(tenth())), counts([o for o in tenth() if o.line.addressed])
    right, wrong = sum(tally["right"].values()), sum(tally["wrong"].values())
    silent, silent_wrong = sum(tally["silent-right"].values()), sum(tally["silent-wrong"].values())
    understood, missed = sum(addressed["right"].values()), sum(addressed["missed"].values())

    assert right / (right + wrong) >= 0.82
    assert silent / (silent + silent_wrong) >= 0.89
    assert understood / (understood + missed) >= 0.72


def test_the_eleventh_sentences_are_read_no_worse_than_they_were() -> None:
    tally, addressed = counts(list(eleventh())), counts([o for o in eleventh() if o.line.addressed])
    right, wrong = sum(tally["right"].values()), sum(tally["wrong"].values())
    silent, silent_wrong = sum(tally["silent-right"].values()), sum(tally["silent-wrong"].values())
    understood, missed = sum(addressed["right"].values()), sum(addressed["missed"].values())

    assert right / (right + wrong) >= 0.93
    assert silent / (silent + silent_wrong) >= 0.96
    assert understood / (understood + missed) >= 0.89
