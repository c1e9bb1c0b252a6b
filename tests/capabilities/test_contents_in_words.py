"""A cook says in passing what is in a dish: it counts for that dish, warns whom it concerns, and is no new dish."""

import pytest

from planning.diets.contents import answered, contents_in, contents_told
from planning.replies import AddPromise, ReplyContext, read
from tests.capabilities.conftest import board, press, say


@pytest.mark.parametrize(
    ("words", "what"),
    [
        ("I just found out there is peanut oil in my soup", ("peanut oil",)),
        ("the noodles have peanut sauce and sesame", ("peanut sauce", "sesame")),
        ("my stew is made with beer and flour", ("beer", "flour")),
        ("mi tarta tiene almendra molida", ("almendra molida",)),
        ("la paella lleva gambas y mejillones", ("gambas", "mejillones")),
    ],
)
def test_what_is_said_to_be_in_a_dish_is_read(words, what):
    assert contents_in(words)[1] == what


@pytest.mark.parametrize(
    "words",
    [
        "spring rolls have peanut too?", "no nuts in my cake", "the cake might have nuts", "the soup has gone cold",
        "my daughter has a nut allergy", "there is room in the car", "we have chairs in the garage",
    ],
)  # fmt: skip
def test_questions_denials_and_other_things_put_nothing_into_a_dish(words):
    assert contents_in(words) is None


async def test_an_allergen_said_in_passing_warns_and_adds_no_dish(play):
    played = await play(
        say("ravi", "/bring lentil soup for 10"),
        board("mei", "I have a severe peanut allergy"),
        board("ravi", "I just found out there is peanut oil in my soup"),
    )

    assert len(played.promises("ravi")) == 1
    assert "peanut" in played.texts()[-1] + played.texts()[-2]
    assert "severe allergy to peanut" in played.everything()


async def test_one_thing_told_does_not_count_as_a_whole_list(play):
    played = await play(say("ravi", "/bring lentil soup for 10"), board("ravi", "there is peanut oil in my soup"))

    assert not played.promises("ravi")[0]["ingredients"]
    assert "peanut oil" in played.promises("ravi")[0]["dish"]


async def test_a_list_there_is_gets_longer(play):
    played = await play(
        say("ravi", "/bring lentil soup for 10"),
        say("ravi", "/contains lentil soup: lentils, carrots"),
        board("ravi", "there is peanut oil in my soup"),
    )

    assert played.promises("ravi")[0]["ingredients"] == ["lentils", "carrots", "peanut oil"]


async def test_in_spanish_what_a_dish_holds_is_no_dish_of_its_own(play):
    played = await play(
        say("ines", "/settings language es"),
        say("ravi", "/bring paella for 10"),
        board("ravi", "la paella lleva gambas y mejillones"),
    )

    assert len(played.promises()) == 1
    assert "mejillones" in played.promises()[0]["dish"]


@pytest.mark.parametrize(
    ("words", "holds", "without"),
    [
        ("apple has butter, no nuts", ("butter",), ("no nuts",)),
        ("no its with flour", ("flour",), ()),
        ("yes 2 eggs per loaf", ("eggs",), ()),
        ("its with sesame oil fyi", ("sesame oil",), ()),
        ("no nuts but same kitchen", (), ("no nuts",)),
        ("it doesn't contain egg", (), ("no egg",)),
        ("el ajiaco lleva pollo y crema", ("pollo", "crema"), ()),
        ("no lleva gluten", (), ("no gluten",)),
    ],
)
def test_an_answer_about_what_is_in_it_is_read_with_what_is_not(words, holds, without):
    told = contents_told(words)[0]

    assert (told.holds, told.without) == (holds, without)


@pytest.mark.parametrize(
    "words",
    ["no pork please", "no bread for me", "with my wife and 2 kids", "yes with pleasure", "it is bread", "no thanks"],
)
def test_wishes_parties_and_dishes_are_no_contents(words):
    assert contents_told(words) == ()


@pytest.mark.parametrize(
    ("words", "contents"),
    [
        ("soup for 10, contains milk", ("milk",)),
        ("cookies for 12, theres walnuts in them", ("walnuts",)),
        ("cookies for 12. they have peanut butter", ("peanut butter",)),
        ("cheesecake for 8 (no nuts in it)", ("no nuts",)),
        ("chili for 10, has beef", ("beef",)),
    ],
)
def test_what_is_in_a_dish_stands_behind_its_promise_and_is_no_dish(words, contents):
    made = [i for i in read(words, ReplyContext("me", replying_to="board")).intents if isinstance(i, AddPromise)]

    assert [i.contents for i in made] == [contents]


async def test_contents_told_with_a_promise_warn_whom_they_concern(play):
    played = await play(
        board("mei", "I have a severe peanut allergy"), board("ravi", "cookies for 12, theres peanut butter in them"),
    )  # fmt: skip

    assert played.promises("ravi")[0]["dish"] == "cookies with peanut butter"
    assert "severe allergy to peanut" in played.everything()


async def test_the_cooks_only_dish_is_meant_by_it_and_nothing_is_added_to_the_table(play):
    played = await play(
        say("ravi", "/bring banana bread for 10"), board("mei", "my son is allergic to eggs"),
        board("ravi", "yes 2 eggs per loaf"),
    )  # fmt: skip

    assert [p["dish"] for p in played.promises("ravi")] == ["banana bread with eggs"]
    assert "must not eat egg" in played.everything()


@pytest.mark.parametrize(
    ("words", "dish", "what"),
    [
        ("uh oh. just looked, the dressing i bought for the noodle salad has peanut oil in it",
         "the dressing i bought for the noodle salad", ("peanut oil",)),
        ("potato salad has mayo w egg in it fyi so not vegan", "potato salad", ("mayo", "egg")),
        ("just checked the label: the stock in my soup contains celery", "the stock in my soup", ("celery",)),
        ("turns out the bread has sesame on top", "the bread", ("sesame",)),
        ("dumplings are with sesame oil, fyi", "dumplings", ("sesame oil",)),
        ("acabo de ver que la salsa lleva cacahuete", "la salsa", ("cacahuete",)),
        ("mi empanada lleva huevo, así que ojo", "mi empanada", ("huevo",)),
    ],
)  # fmt: skip
def test_what_was_found_out_of_a_dish_is_read_whatever_leads_to_it(words, dish, what):
    (told,) = [t for t in contents_told(words) if t.holds]

    assert (told.dish, told.holds) == (dish, what)


@pytest.mark.parametrize("words", ["yes in the dressing", "yep, a bit", "afraid so", "sí, en la masa", "it does"])
def test_a_cooks_yes_is_a_yes(words):
    assert answered(words) is True


@pytest.mark.parametrize("words", ["no", "nope, none at all", "para nada"])
def test_a_cooks_no_is_a_no(words):
    assert answered(words) is False


@pytest.mark.parametrize("words", ["yes I'm coming", "no idea", "yes and two kids", "sí, voy", "some of us"])
def test_other_words_answer_nothing_about_food(words):
    assert answered(words) is None


async def test_the_cook_answers_what_was_asked_of_one_of_several_dishes(play):
    played = await play(
        board("mei", "coming, severe fish allergy"),
        board("ravi", "caesar salad for 12"),
        board("ravi", "roast potatoes for 12"),
        board("mei", "does the caesar have anchovies?"),
        board("ravi", "yes in the dressing"),
    )

    assert {p["dish"] for p in played.promises("ravi")} == {"caesar salad with anchovies", "roast potatoes"}
    assert "fish by its name" in played.everything()


async def test_what_names_no_dish_of_several_is_asked_about_and_one_press_tells(play):
    played = await play(
        board("mei", "coming, severe wheat allergy"),
        board("ravi", "gravy for 12"),
        board("ravi", "roast potatoes for 12"),
        say("ravi", "no its with flour"),
        press("ravi", "gravy"),
        first={"bot_sees_all": True},
    )

    assert {p["dish"] for p in played.promises("ravi")} == {"gravy with flour", "roast potatoes"}


async def test_what_is_in_dishes_of_one_name_is_in_all_of_them(play):
    played = await play(
        board("ravi", "dumplings with pork, 60 pieces"),
        board("ravi", "and 80 more dumplings"),
        say("ravi", "dumplings are with sesame oil, fyi"),
        first={"bot_sees_all": True},
    )

    assert all("sesame oil" in p["dish"] for p in played.promises("ravi"))


async def test_a_diet_behind_a_dish_is_the_dishs_or_the_cooks_as_they_say(play):
    played = await play(
        board("ravi", "chili for 12"), board("ravi", "vegan tho"), press("ravi", "chili"),
        board("mei", "slaw for 12"), board("mei", "vegetarian though"), press("mei", "I am"),
    )  # fmt: skip

    assert [p["dish"] for p in played.promises("ravi")] == ["chili, vegan"]
    assert played.guest("ravi")["needs"] == []
    assert [n["need"] for n in played.guest("mei")["needs"]] == ["vegetarian"]


async def test_a_new_dish_told_with_what_is_in_it_is_noted_and_no_other_is_asked_about(play):
    played = await play(
        say("ines", "/settings language es"),
        board("mei", "vengo, alergia grave al cacahuate"),
        board("ravi", "llevo guacamole para 12"),
        board("ravi", "llevo totopos para 10"),
        board("ravi", "llevo también una salsa macha, lleva cacahuate"),
    )

    assert any("salsa macha" in p["dish"] for p in played.promises("ravi"))
    assert "¿Cuál de tus platos" not in played.everything()


async def test_a_cook_s_bare_list_of_ingredients_is_of_their_dish_and_reaches_whoever_must_not_eat_it(play):
    played = await play(
        say("ravi", "/bring chicken tikka for 10"),
        say("mei", "/start @link", **{"in": "private"}),
        say("mei", "severe almond allergy, I carry an epipen", **{"in": "private"}),
        board("ravi", "chicken, yoghurt, tomatoes, onions, cream, ground almonds, spices"),
        board("ravi", "ok no almonds then, swapping them for cashew cream. no wait, just more yoghurt"),
    )

    assert "ground almonds" in played.texts()[-2] or "ground almonds" in played.everything()
    assert any("not for you" in text and "chicken tikka" in text for text in played.texts("mei"))
    assert not any("almond" in item for item in played.promises("ravi")[0]["ingredients"])


@pytest.mark.parametrize(
    ("words", "holds", "without"),
    [
        ("egg glaze on top", ("egg glaze",), ()),
        ("no meat in the ziti btw", (), ("no meat",)),
        ("sin nueces en el pastel", (), ("no nueces",)),
    ],
)
def test_what_lies_on_a_dish_or_is_not_in_it_is_told_of_it(words, holds, without):
    (told,) = contents_told(words)

    assert (told.holds, told.without) == (holds, without)


async def test_what_was_said_beside_an_offer_is_in_the_dish_once_the_question_is_answered(play):
    played = await play(
        board("ravi", "thinking of bringing an apple pie. egg glaze on top"),
        press("ravi", "Yes"),
    )

    assert [p["dish"] for p in played.promises("ravi")] == ["apple pie with egg glaze"]
    assert "did not get" not in played.everything()


async def test_a_need_told_beside_what_is_in_ones_dish_is_noted_too(play):
    played = await play(
        board("ravi", "I'll bring cornbread for 12"),
        board("ravi", "i'm coeliac, properly. cornbread has no wheat flour in mine"),
    )

    assert "gluten" in str(played.guest("ravi"))
    assert "says the cook" in played.everything()
