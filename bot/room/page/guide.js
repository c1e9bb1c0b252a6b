// Beside the chats: what else to try, what the bot decided and why, and what it will say by itself.
import { make } from "/page/draw.js";
import { store, watch } from "/page/store.js";
import { language, t } from "/page/words.js";

const MORE = [
  ["/picture", "more-picture"], ["/missing", "more-missing"], ["/bar baked potato", "more-bar"],
  ["/kitchen 1 oven, 1 slow cooker, 2 burners", "more-kitchen"], ["/table", "more-table"], ["/print", "more-print"],
  ["/late 20", "more-late"], ["/leftovers", "more-leftovers"], ["/again", "more-again"],
  ["/settings language es", "more-language"],
];
const NEWEST = 8;

export function setUpGuide({ compose }) {
  function rows(section, told, shown) {
    section.hidden = !told.length;
    section.querySelector("ul").replaceChildren(...told.map((d) => make("li", {}, shown(d))));
  }

  // "Sat 17:30": the clock says the day of most of what stands here.
  function when(at) {
    const wall = new Date(`${at.slice(0, 16)}:00Z`);
    if (Number.isNaN(wall.valueOf())) return at;
    return wall.toLocaleString(language === "en" ? "en-GB" : language, { timeZone: "UTC", weekday: "short", day: "numeric", hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  }

  function tell(d) {
    const row = make("div", { dir: "auto" }, make("time", { datetime: d.at }, when(d.at)), ` ${d.what}`);
    row.append(make("small", {}, d.why));
    return row;
  }

  function draw() {
    const more = document.querySelector("#more");
    rows(more, MORE, ([command, key]) => {
      const row = make("div", {}, make("button", { type: "button", class: "command", onclick: () => compose(command) }, command));
      row.append(make("small", {}, t(key)));
      return row;
    });
    drawDecisions();
  }

  function drawDecisions() {
    const told = store.decisions;
    rows(document.querySelector("#why"), told.filter((d) => !d.ahead).slice(-NEWEST).reverse(), tell);
    rows(document.querySelector("#ahead"), told.filter((d) => d.ahead), tell);
  }

  watch((what) => {
    if (what === "loaded") draw();
    if (what === "decisions") drawDecisions();
  });
  return { draw };
}
