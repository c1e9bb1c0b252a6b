# Faults of a potluck file: one line each. $place is where in the file, like guests[2].adults.

file-not-object = { $place } must be an object in braces.
file-format = format { $value } is not known; write 1.
file-missing = { $place } is missing; add it.
file-unknown-key = { $place } is not known and was left out.
file-wrong-type = { $place } must be { $wanted ->
    [text] text in quotes
    [number] a number
    [amount] an amount like "12.50"
    [true-or-false] true or false
    [list] a list in brackets
    [latitude-longitude] a list of latitude and longitude
   *[list-of-texts] a list of texts
}.
file-too-low = { $place } is { $value }; it must be { $low } or more.
file-not-whole = { $place } is { $value }; it must be a whole number.
file-unknown-word = { $place } is “{ $value }”; it must be one of { $allowed }.
file-bad-time = { $place } is “{ $value }”; write it like 2027-09-18T17:00.
file-ends-before-start = { $place } must be after starts_at.
file-service-level = { $place } is { $value }; it must lie between 0 and 1.
file-unknown-zone = { $place } is “{ $value }”; name a zone of the IANA database like America/Chicago.
file-odds = { $place } is { $value }; it must lie from 0 to 1.
file-doubled-id = { $place }: the id “{ $id }” stands twice; give each its own.
file-promise-of-nobody = promise “{ $id }” belongs to “{ $guest }”, who is not among the guests.
file-payment-of-nobody = { $place } is by “{ $guest }”, who is not among the guests.
file-declined-by-nobody = { $place } names “{ $guest }”, who is not among the guests; it changes nothing.
file-bad-date = { $place } is “{ $value }”; write the date like 2027-09-18.
file-unknown-guest = { $place } names “{ $guest }”, who is not among the guests.
file-awake = { $place } must be two times like ["07:00", "22:00"].
