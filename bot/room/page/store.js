// What the page knows: the room's state, kept up to date by the live events.
import { language, t } from "/page/words.js";

export const store = { me: null, chats: new Map(), people: new Map(), bot: null, group: null, menus: {}, decisions: [] };
const watchers = [];

export function watch(tell) { watchers.push(tell); }
function tellAll(what, detail) { for (const tell of watchers) tell(what, detail); }

export async function load() {
  const state = await (await fetch("/room/state")).json();
  store.bot = state.bot;
  store.group = state.group;
  store.menus = state.menus;
  store.people = new Map(state.people.map((p) => [p.id, p.name]));
  store.chats = new Map(state.chats.map((c) => [c.id, { ...c, messages: new Map(c.messages.map((m) => [m.key, m])) }]));
  if (!store.people.has(store.me)) store.me = state.people.length ? state.people[0].id : null;
  tellAll("loaded");
  tellAll("clock", state.clock);
  tellAll("playing", state.playing);
  loadDecisions();
}

export function listen() {
  const live = new EventSource("/room/events");
  let begun = false;
  live.onopen = () => { if (begun) load(); begun = true; };
  live.onmessage = (event) => take(JSON.parse(event.data));
  live.onerror = () => tellAll("away");
}

function take(event) {
  if (event.clock) tellAll("clock", event.clock);
  if (event.kind === "clock") return;
  if (event.kind === "moving" || event.kind === "busy") { tellAll(event.kind, event.on); return; }
  if (event.kind === "playing") { tellAll("playing", event.playing); return; }
  const chat = store.chats.get(event.chat);
  // A new chat id (an upgraded group) or new people: read everything anew.
  if (!chat) { load(); return; }
  Object.assign(chat, event.head);
  if (event.kind === "delete") chat.messages.delete(event.key);
  if (event.message) {
    const fresh = !chat.messages.has(event.message.key);
    chat.messages.set(event.message.key, event.message);
    tellAll("message", { chat, message: event.message, fresh });
  }
  tellAll("event", { ...event, chatHere: chat });
}

export function nameOf(id) { return id === store.bot.id ? store.bot.name : store.people.get(id) || t("somebody"); }

// Something a person does: the one chosen at the top, or whose pane it was done in.
export async function act(what) {
  const answer = await fetch("/room/do", {
    method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ who: store.me, ...what }),
  });
  if (answer.ok) { tellAll("acted", what); return true; }
  const why = await answer.json().catch(() => ({ error: t("away") }));
  tellAll("refused", why.error);
  return false;
}

export async function loadDecisions() {
  store.decisions = await (await fetch(`/room/decisions?lang=${language}`)).json();
  tellAll("decisions");
}
