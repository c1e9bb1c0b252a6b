# The lines of `check`: one for each thing verified. Facts are named in each text.

check-settings-ok = settings: read, mode { $mode }
check-settings-bad = settings: { $what }
check-limits-off = settings: TUREEN_SEND_LIMITS is off, which is only for measuring; the platform will answer floods with 429
check-database-ok = database: { $kind } answers and can be written to
check-database-new = database: { $what } does not exist yet; the first start makes it
check-database-bad = database: can't be used ({ $why }); check TUREEN_DATABASE_URL, the folder's rights and the disk
check-durable-ok = durability: { $kind } has each change on the disk before it is answered
check-durable-bad = durability: fsync is off in this { $kind } server, so a power loss takes answered changes; set fsync = on
check-migrations-ok = migrations: up to date ({ $revision })
check-migrations-first = migrations: none yet; the first start applies them all
check-migrations-behind = migrations: at { $revision }; the next start brings them to { $newest }
check-migrations-newer = migrations: at { $revision }, which this version doesn't know; run the version that wrote it, or a newer one
check-clock-ok = clock: within { $seconds } s of the platform's
check-clock-bad = clock: { $seconds } s away from the platform's; reminders would be off by as much, so set this machine's clock
check-clock-unknown = clock: could not be compared, the platform did not tell its time
check-token-ok = token: accepted, the bot is @{ $username }
check-token-privacy = token: accepted, the bot is @{ $username }; it sees all group messages (privacy mode is off)
check-token-bad = token: refused by the platform; copy it again from where you got it
check-token-missing = token: TUREEN_TOKEN is missing
check-token-unknown = token: the platform can't be reached ({ $why }); check the network and TUREEN_API_BASE_URL
check-webhook-ok = webhook: set to { $url }, { $waiting } updates waiting
check-webhook-error = webhook: the platform reports “{ $why }”; check that { $url } can be reached from outside
check-webhook-other = webhook: another one is set; starting with TUREEN_MODE=polling removes it
