help-bring = bring something, like “/bring slaw for 12”
help-drop = no longer bring something
help-give = hand a dish to somebody else, like “/give slaw to Mei”
help-share = bring a dish together, like “/share slaw with Mei”
help-contains = say what is in your dish

button-bring = Bring something
button-missing = What's missing
button-own-words = In my own words
button-something-else = Something else
button-drop = Drop { $dish }

bring-category = { $category } for about { $servings }
bring-offer = { $name }, this would help most:
bring-which = { $name }, which { $category }, for about { $servings }?
bring-see-private = I wrote to you in private.
bring-see-here = Look below: those buttons are yours.
ask-bring = { $name }, what will you bring? Reply to this, like “slaw for 12”.
bring-told = I'll bring
bring-noted = Noted: { $dish } { $amount } ({ $category }).{ $doubled ->
    [0] {""}
    [one] {" "}{ $others } brings that too – fine, or choose something else.
   *[other] {" "}{ $others } bring that too – fine, or choose something else.
}
bring-as-what = “{ $dish }” – I don't know that one. What is it on the table?
button-nothing = Nothing, leave it
bring-toast = Yours: { $dish }. Thank you!
dropped = Off the list: { $dish }.
told-dropped = { $by } took your { $dish } off the list.
given = { $dish } goes to { $name }.
told-given = { $by } handed { $dish } to you. /list shows what you bring; /drop takes it off.
shared = { $name } brings { $dish } too, together.
told-shared = You and { $by } bring { $dish } together.
contains-noted = { $dish } contains, says the cook: { $ingredients }.

board-table = <b>The table</b> (servings promised of wanted)
board-row = { $category } { $promised }/{ $target }{ $short ->
    [0] { $dishes ->
        [0] {" "}✓
        [one] {" "}– one more dish would help
       *[other] {" "}– { $dishes } more dishes would help
    }
   *[other] {" "}– short by { $short }
}
board-dish = {"  "}• { $dish } { $amount } – { $cooks }
board-more-dishes = {"  "}• and { $n } more
board-kinds = {"  "}• nobody yet: { $kinds }
