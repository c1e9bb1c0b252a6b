# The practice room: its own labels, what its page tells of the bot's decisions, and the five things to try. All plain text.

room-title = Tureen – the room
room-name = practice room
room-skip = Skip to writing in the group
room-you-are = You are
room-admin = { $name }, group admin
room-view = What to see
room-view-one = One at a time
room-view-all = Side by side
room-language = Language
room-clock = Clock
room-hour = +1 hour
room-day = +1 day
room-next = Next reminder
room-move-to = Move to
room-move = Move
room-moving = The clock is moving …
room-playing = The demo is being played: line { $n } of { $of }
room-busy = Tureen is working …
room-away = The room is closed. Start it again to go on.
room-tabs = What to show
room-tab-group = Group
room-tab-private = Private
room-tab-guide = Guide
room-news = new
room-group = Group
room-people = People: { $n }
room-no-bot = The bot is not here.
room-board = Pinned board
room-board-above = The board, pinned above
room-group-chat = Group chat
room-private-of = { $name } and the bot
room-who-here = Whose private chat
room-speak = Speak in the group as { $name }
room-stopped = stopped
room-not-opened = not opened yet
room-open-private = Open the private chat
room-said-nothing = Nobody has said anything yet.
room-private-nothing = Nothing has been said here yet. What you write here only the bot reads.
room-write-group = Write in the group as { $name }
room-write-private = Write to the bot as { $name }
room-send = Send
room-cancel = Cancel
room-commands = Commands …
room-send-else = Send …
room-send-photo = a photo
room-send-voice = a voice message
room-send-sticker = a sticker
room-send-location = a location
room-changing = Changing: { $text }
room-replying = Replying to { $name }: { $text }
room-reply = Reply
room-react = React
room-edit = Edit
room-delete = Delete
room-reply-to = Reply to: { $text }
room-react-to = React to: { $text }
room-react-with = React with { $text }
room-edit-it = Edit: { $text }
room-delete-it = Delete: { $text }
room-reacted = { $text } by { $name }
room-changed = changed
room-buttons = Buttons of this message
room-picture = Picture: { $name }
room-somebody = Someone
room-told = { $name }: { $text }
room-ok = OK

## What the bot decided

room-why = What the bot decided, and why
room-ahead = What it will say by itself
room-why-read = read in the words “{ $text }”
room-why-said = written to the bot
room-why-pressed = a button was pressed
room-taken-back = { $text } (taken back)
room-to-group = to the group
room-to-host = to the host
room-to-name = to { $name }
room-deed = { $deed ->
    [did-add] { $name } was put on the list
    [did-answer] { $answer ->
        [yes] coming
        [maybe] maybe
        [no] can't come
       *[other] no answer any more
    }
    [did-answer-by] the day to answer by was set
    [did-arrive] when a dish arrives was set
    [did-began] { $dish } went on the heat
    [did-away] { $dish } left the table
    [did-bar] the toppings bar was changed
    [did-budget] the budget was set
    [did-cohost] the hosts were changed
    [did-contains] what is in a dish was listed
    [did-decline] an ask was turned down
    [did-drop] { $dish } was dropped
    [did-edit] an edited message was read again
    [did-frozen] { $dish } comes frozen
    [did-give] { $dish } was handed on
    [did-heat] how a dish is heated was set
    [did-invite] people were invited
    [did-item] something to buy was added
    [did-kitchen] the kitchen was described
    [did-meet] a conversation about needs was begun
    [did-needs] what somebody can't eat was noted
    [did-out] a dish went onto the table
    [did-party] how many come was noted
    [did-pay] a payment was noted
    [did-place] the place was set
    [did-price] a price was noted
    [did-promise] { $dish } was promised
    [did-resize] the number of people was set
    [did-share] { $dish } is brought together
    [did-topping] { $topping } was taken
    [did-units] the units were set
    [did-when] the time was moved
    [did-zone] the clock's zone was set
    [did-answer-for] an answer was given for somebody
    [did-cancel] it was called off
    [did-host] somebody else became the host
    [did-leave] left
    [did-remove] somebody was taken off the list
    [did-title] it got another name
   *[other] the plan was changed
}

## Five things to try

room-try = Five things to try
room-try-count = { $n } of { $of } done
room-try-done = All five done. The room is yours.
room-try-write = Write it for { $name }
room-try-go = Take me there as { $name }
room-try-clock = Take me to the clock
room-try-skip = Skip
room-try-is-done = done
room-try-no-button = There is no such button yet: start a potluck first.
room-try-start = Start a potluck
room-try-start-how = Whoever starts one is its host. A day, a time and a guess at the people are enough.
room-try-start-say = /potluck Sat 5pm, about 24 people
room-try-start-then = The board is pinned above the chat. It changes with every answer.
room-try-answer = Answer as a guest
room-try-answer-how = Press “Coming” on the board, as a guest would on a phone.
room-try-answer-then = The board counts one more. Had it been a slip: Undo, or another button.
room-try-bring = Bring something, in your own words
room-try-bring-how = A reply to the board is read like a sentence to a friend.
room-try-bring-say = There are 3 of us, one vegetarian, and we bring a corn salad for 8
room-try-bring-then = One sentence, three facts noted. The panel below says which words were read.
room-try-needs = Say what you can't eat, in private
room-try-needs-how = The link on the board opens your private chat with the bot. The group only reads that someone has a need.
room-try-needs-then = Every dish is now compared with that need. Send /eat in the private chat to see which to ask about.
room-try-move = Let time pass
room-try-move-how = Move the clock to the next reminder. The bot speaks by itself, each time to whom it concerns.
room-try-move-then = Go on to the day itself: the oven, the clocks of what stands out, what is left over.
room-more = And then
room-more-picture = the table as a picture
room-more-missing = what is missing, and who could bring it
room-more-bar = the toppings bar and what the next topping opens
room-more-kitchen = oven, slow cookers and burners to one serving time
room-more-table = the numbers behind the board
room-more-print = cards, run sheet, shopping list, tags
room-more-late = twenty minutes late, and what it shifts
room-more-leftovers = what keeps, and for how long
room-more-again = the same supper once more
room-more-language = the bot speaks Spanish in the group
