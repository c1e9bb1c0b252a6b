"""The only SQL in the project. `Store` is the door; values go in and out, rows stay inside."""

from bot.storage.copying import CopyFailed, copy_all
from bot.storage.diffs import apply_diff, diff
from bot.storage.errors import AlreadyTaken, Conflict, Stale, StorageError, StorageTrouble
from bot.storage.store import Store
from bot.storage.values import (
    Action,
    Batch,
    ChatRecord,
    CommitResult,
    Dialog,
    EntityChange,
    FinishedReminder,
    NewAction,
    PersonRecord,
    Post,
    PotluckPlace,
    Recollection,
    ReminderRow,
    SentMessage,
    Stored,
    TurnData,
)

__all__ = [
    "Action",
    "AlreadyTaken",
    "Batch",
    "ChatRecord",
    "CommitResult",
    "Conflict",
    "CopyFailed",
    "Dialog",
    "EntityChange",
    "FinishedReminder",
    "NewAction",
    "PersonRecord",
    "Post",
    "PotluckPlace",
    "Recollection",
    "ReminderRow",
    "SentMessage",
    "Stale",
    "StorageError",
    "StorageTrouble",
    "Store",
    "Stored",
    "TurnData",
    "apply_diff",
    "copy_all",
    "diff",
]
