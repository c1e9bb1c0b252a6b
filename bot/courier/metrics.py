"""What the operator watches. One registry per bot, so that two bots in one process don't collide."""

from __future__ import annotations

from prometheus_client import CollectorRegistry, Counter, Gauge, Histogram, generate_latest

_SECONDS = (0.001, 0.0025, 0.005, 0.01, 0.02, 0.04, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)


class Metrics:
    def __init__(self) -> None:
        self.registry = CollectorRegistry()
        self.updates = Counter("tureen_updates", "Updates taken from the platform", ["kind"], registry=self.registry)
        self.update_s = Histogram(
            "tureen_update_seconds", "From taking an update to its commit and answer", buckets=_SECONDS,
            registry=self.registry,
        )
        self.failures = Counter("tureen_update_failures", "Updates whose handling failed", registry=self.registry)
        self.passed_over = Counter(
            "tureen_updates_passed_over", "Updates of a person or chat that sent too many", registry=self.registry
        )
        self.posts = Counter(
            "tureen_posts", "Messages, edits and pins by how they ended", ["method", "end"], registry=self.registry
        )
        self.api_errors = Counter("tureen_api_errors", "Failed calls by meaning", ["kind"], registry=self.registry)
        self.boards = Counter("tureen_board_edits", "Board refreshes by end", ["end"], registry=self.registry)
        self.reminders = Counter("tureen_reminders", "Reminders by how they ended", ["end"], registry=self.registry)
        self.outbox = Gauge("tureen_outbox_posts", "Posts waiting to be sent", registry=self.registry)
        self.late_s = Gauge(
            "tureen_reminders_late_seconds", "How late the oldest due reminder is; 0: none", registry=self.registry
        )
        self.chats = Gauge("tureen_courier_chats", "Chats the courier is busy with", registry=self.registry)
        self.poll_age_s = Gauge("tureen_poll_age_seconds", "Since the last good getUpdates", registry=self.registry)

    def text(self) -> bytes:
        return generate_latest(self.registry)
