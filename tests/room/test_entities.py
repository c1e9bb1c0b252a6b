"""HTML as the platform parses it. Error texts and byte offsets: facts gathered from the published source of the
platform's core library (its parser and the parser's own test vectors), restated here one by one."""

from __future__ import annotations

import html

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.room.entities import Formatted, find_automatic, parse_html, strip, utf16_length, utf16_slice
from bot.room.entities import given as given_entities
from bot.room.errors import ApiError
from bot.room.rendered import to_html


def marks(text: str) -> list[tuple[str, int, int]]:
    return [(e.type, e.offset, e.length) for e in parse_html(text).entities]


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("<br>", 'Unsupported start tag "br" at byte offset 0'),
        ("a < b", 'Unsupported start tag "" at byte offset 2'),
        ("x <b", "Unclosed start tag at byte offset 2"),
        ("é<b", "Unclosed start tag at byte offset 2"),  # é is two bytes
        ("\U0001f954<p>", 'Unsupported start tag "p" at byte offset 4'),  # a potato is four bytes
        ("<a href", 'Unclosed start tag "a" at byte offset 0'),
        ("<a href=", 'Unclosed start tag "a" at byte offset 0'),
        ('<a href="x"', "Unclosed start tag at byte offset 0"),
        ('<a href="x', "Unclosed start tag at byte offset 0"),
        ('<a ="x">y</a>', 'Empty attribute name in the tag "a" at byte offset 0'),
        ("<a href=x/>y</a>", "Unexpected end of name token at byte offset 8"),
        ("<span>x</span>", 'Tag "span" must have class "tg-spoiler" at byte offset 0'),
        ('<span class="spoiler">x</span>', 'Tag "span" must have class "tg-spoiler" at byte offset 0'),
        ("x</b>", "Unexpected end tag at byte offset 1"),
        ("<b>x</b", "Unclosed end tag at byte offset 4"),
        ("<b>x</i>", 'Unmatched end tag at byte offset 4, expected "</b>", found "</i>"'),
        ("<b><i>x</b></i>", 'Unmatched end tag at byte offset 7, expected "</i>", found "</b>"'),
        ("<b>x", 'Can\'t find end tag corresponding to start tag "b"'),
        ("<b>x<i>y", 'Can\'t find end tag corresponding to start tag "i"'),
        ('<tg-emoji emoji-id="x">y</tg-emoji>', "Invalid custom emoji identifier specified"),
    ],
)
def test_a_fault_is_told_in_the_platforms_words_with_its_byte_offset(text: str, why: str) -> None:
    with pytest.raises(ApiError) as caught:
        parse_html(text)

    assert caught.value.code == 400
    assert caught.value.description == f"Bad Request: can't parse entities: {why}"


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("&lt;b&gt; &amp; &quot;", '<b> & "'),
        ("&#65;&#x42;", "AB"),
        ("&#128512;", "\U0001f600"),
        ("&nbsp;&apos;&copy;", "&nbsp;&apos;&copy;"),  # only four names are known, the rest stays as it is
        ("a & b &", "a & b &"),
        ("&amp&lt", "&<"),  # the semicolon may be missing
        ("&amp;&amp;", "&&"),
        ("&amp;lt;", "&lt;"),  # decoded once
        ("<b></b>x", "x"),
        ("<B>x</b >", "x"),
        ("<b>x</>", "x"),  # the nameless end tag closes the innermost
    ],
)
def test_references_and_tags_leave_this_plain_text(text: str, plain: str) -> None:
    assert parse_html(text).text == plain


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("<b>a</b>", [("bold", 0, 1)]),
        ("<strong>a</strong><em>b</em>", [("bold", 0, 1), ("italic", 1, 1)]),
        ("<u>a</u><ins>b</ins>", [("underline", 0, 1), ("underline", 1, 1)]),
        ("<s>a</s><strike>b</strike><del>c</del>", [("strikethrough", i, 1) for i in range(3)]),
        ("<tg-spoiler>a</tg-spoiler>", [("spoiler", 0, 1)]),
        ('<span class="tg-spoiler">a</span>', [("spoiler", 0, 1)]),
        ("<code>a</code><pre>b</pre>", [("code", 0, 1), ("pre", 1, 1)]),
        ("<blockquote>a</blockquote>", [("blockquote", 0, 1)]),
        ("<blockquote expandable>a</blockquote>", [("expandable_blockquote", 0, 1)]),
        ("\U0001f954<b>a</b>", [("bold", 2, 1)]),  # a potato is two UTF-16 units
        ("é<b>\U0001f954</b>", [("bold", 1, 2)]),
        ("<b>a<i>b</i></b>", [("bold", 0, 2), ("italic", 1, 1)]),
        ("<b></b>a", []),
        ('<a href="no address">a</a>', []),  # dropped without complaint
    ],
)
def test_a_tag_makes_this_entity_counted_in_utf16_units(text: str, expected: list[tuple[str, int, int]]) -> None:
    assert marks(text) == expected


def test_pre_with_code_inside_is_one_entity_with_a_language() -> None:
    entity = parse_html('<pre><code class="language-python">x</code></pre>').entities

    assert [(e.type, dict(e.extra)) for e in entity] == [("pre", {"language": "python"})]


def test_a_link_to_a_person_is_a_mention_and_other_links_keep_their_address() -> None:
    both = parse_html('<a href="tg://user?id=42">Mei</a> <a href="http://a.example/?x=1&amp;y=2">b</a>').entities

    assert [(e.type, dict(e.extra)) for e in both] == [
        ("text_mention", {"user_id": 42}),
        ("text_link", {"url": "http://a.example/?x=1&y=2"}),
    ]


def test_white_space_is_cut_at_both_ends_and_the_entities_move_along() -> None:
    value = strip(parse_html("  <b> a </b> "))

    assert value.text == "a"
    assert [(e.offset, e.length) for e in value.entities] == [(0, 1)]


def test_commands_are_marked_by_the_platform_itself() -> None:
    found = find_automatic(Formatted("/bring@some_bot slaw, see /list"))

    assert [(e.type, e.offset, e.length) for e in found.entities] == [("bot_command", 0, 15), ("bot_command", 26, 5)]


@pytest.mark.parametrize("where", [(-1, 2), (0, 0), (0, 9), (5, 1)])
def test_a_given_entity_outside_the_text_is_refused(where: tuple[int, int]) -> None:
    with pytest.raises(ApiError):
        given_entities("four", [{"type": "bold", "offset": where[0], "length": where[1]}])


pieces = st.lists(
    st.one_of(
        st.sampled_from(
            ["<b>", "</b>", "<i>", "</i>", "</>", '<a href="http://a.example">', "</a>", "<pre>", "</pre>"]
        ),
        st.sampled_from(["&lt;", "&amp;", "&#128512;", "&", "<", ">", "/", '"', "'", "=", "\0", " ", "code", "<span"]),
        st.text(max_size=5),
    ),
    max_size=25,
).map("".join)


@given(pieces)
def test_any_text_parses_or_is_refused_and_every_entity_lies_inside_the_text(text: str) -> None:
    value = Formatted("")
    refusal = "Bad Request: can't parse entities: "
    try:
        value = parse_html(text)
    except ApiError as error:
        refusal = error.description

    assert refusal.startswith("Bad Request: can't parse entities: ")
    for e in value.entities:
        assert e.length > 0
        assert e.offset >= 0
        assert e.offset + e.length <= utf16_length(value.text)


words = st.text(st.characters(exclude_categories=("Cs",)), min_size=1, max_size=12).filter(lambda t: "\0" not in t)


@given(words, words, words)
def test_an_entity_cut_out_of_the_text_is_what_stood_between_its_tags(before: str, inside: str, after: str) -> None:
    value = parse_html(
        f"{html.escape(before)}<b>{html.escape(inside, quote=False)}</b>{html.escape(after)}".replace("&#x27;", "'")
    )

    (entity,) = value.entities
    assert utf16_slice(value.text, entity.offset, entity.length) == inside


@given(pieces)
def test_what_the_page_shows_of_a_text_holds_nothing_but_the_rooms_own_tags(text: str) -> None:
    try:
        value = find_automatic(parse_html(text))
    except ApiError:
        return

    shown = to_html(value, "some_bot")

    opened = [part.split(">")[0].split(" ")[0] for part in shown.split("<")[1:]]
    assert set(opened) <= {
        f"{slash}{tag}" for tag in ("a", "strong", "em", "pre", "code", "kbd", "span", "b") for slash in ("", "/")
    }
