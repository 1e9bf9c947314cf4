// The form asks, the advice follows. The newest question wins.
import { el, replace } from "./dom.js";
import { firstWords, keepLanguage, language, languages, say, speak } from "./texts.js";
import { Turns, ask, hasKey } from "./service.js";
import { exampleState, numberOf } from "./state.js";
import { linkOf, readLink } from "./link.js";
import { controlAt, recommendationOf, secondOpinionOf, withBudget } from "./request.js";
import { loadCatalogue, rememberName } from "./catalogue.js";
import { showForm } from "./form.js";
import { ownedNames } from "./rows.js";
import { button, clearErrors, focusOn, idOf, showError } from "./controls.js";
import { fillPart, layOut, showProblem } from "./advice.js";
import { showSummary } from "./summary.js";
import { viewsOf } from "./views.js";
import { purchasesOf, showUnavailable } from "./purchases.js";
import { pathOf, remarksOf, targetsOf } from "./remarks.js";
import { curveOf, reachFor } from "./curve.js";
import { ladderOf } from "./ladder.js";
import { showPrintHead, takeawayOf } from "./takeaway.js";

const pauseMs = 180;
const newsPauseMs = 600;
const recommendations = "/v1/recommendations";

const turns = new Turns();
const advice = document.getElementById("advice");
const form = { root: document.getElementById("form"), state: null, changed, goToAdvice, loadCatalogue: showCatalogue };
const keyPlace = document.getElementById("key");
const curve = { reach: 0, moved: "", asked: "", move: null };
let waiting;
let news;
let strangeLink = false;
let refused;

start();

async function start() {
  await firstWords;
  openLink();
  showAll();
  document.addEventListener("submit", event => event.preventDefault());
  addEventListener("hashchange", () => {
    openLink();
    showAll();
    advise();
  });
  begin();
}

function begin() {
  advise();
  showCatalogue();
}

async function showCatalogue() {
  await loadCatalogue(form.state.catalogue);
  showForm(form);
  if (refused) {
    showRefusal(...refused);
  }
}

function openLink() {
  const read = readLink(location.hash);
  form.state = read?.state ?? exampleState();
  form.isExample = !read;
  strangeLink = read?.strange ?? false;
}

function showAll() {
  document.documentElement.lang = language();
  document.title = `Evenstep – ${say("tagline")}`;
  showMasthead();
  replace(document.querySelector(".sun"), el("strong", say("sunLead")), " ", say("sun"));
  showForm(form);
  clearAdvice();
  keyPlace.hidden = true;
}

function clearAdvice() {
  layOut(advice);
  curve.asked = "";
}

function showMasthead() {
  replace(document.querySelector(".masthead"),
    el("a", { class: "skip", href: "#advice", onclick: goToAdvice }, say("skip")),
    el("div", el("h1", "Evenstep"), el("p.tagline", say("tagline"))),
    el("div", { class: "languages", role: "group", "aria-label": say("language") }, languages.map(([tag, name]) =>
      el("button", {
        type: "button", id: idOf(`language.${tag}`), lang: tag, "aria-pressed": String(tag === language()), onclick: () => changeLanguage(tag),
      }, name))));
  replace(document.querySelector(".colophon"),
    el("p", say("colophon"), " ", el("a", { href: "/swagger" }, say("swaggerLink")), " · ", el("a", { href: "/openapi/v1.json" }, say("openapiLink"))),
    button(say("key.label"), toggleKey, { class: "slight" }));
}

/** The fragment holds the form, so that a jump within the page must not touch it. */
function goToAdvice(event) {
  event.preventDefault();
  advice.focus();
  advice.scrollIntoView();
}

/** Fetched only where it is needed. */
async function openKey(why) {
  const { showKey } = await import("./key.js");
  showKey(keyPlace, why, begin);
}

function closeKey() {
  if (keyPlace.contains(document.activeElement)) {
    advice.focus();
  }

  keyPlace.hidden = true;
}

const toggleKey = () => (keyPlace.hidden ? openKey().then(() => focusOn("key")) : closeKey());

/** Without a key, or with one that is unknown or revoked: what it opened goes too. */
async function lockOut() {
  const why = say(hasKey() ? "key.unknown" : "key.wanted");
  clearAdvice();
  await openKey(why);
  announce(why);
}

async function changeLanguage(tag) {
  await speak(tag);
  keepLanguage(tag);
  showAll();
  focusOn(`language.${tag}`);
  advise();
}

function changed(rebuild) {
  form.isExample = false;
  if (rebuild) {
    showForm(form);
  }

  history.replaceState(null, "", `#${linkOf(form.state)}`);
  clearTimeout(waiting);
  waiting = setTimeout(advise, pauseMs);
}

async function advise() {
  const signal = turns.next();
  const asked = recommendationOf(form.state);
  advice.setAttribute("aria-busy", "true");
  try {
    const { json, problem, unreachable } = await ask(recommendations, asked.body, signal);
    if (unreachable) {
      showProblem(el("p", say("unreachable")));
    } else if (problem?.status === 401) {
      await lockOut();
    } else if (json || problem) {
      closeKey();
      clearErrors(form.root);
      refused = problem && [problem, asked];
      await (problem ? showRefusal(problem, asked) : showAnswer(json, asked.body, signal));
    }
  } finally {
    if (!signal.aborted) {
      advice.removeAttribute("aria-busy");
    }
  }
}

function showRefusal({ detail, errors }, { places }) {
  const lead = say(errors ? "problemLead" : "problemOther");
  const lost = Object.entries(errors ?? { "": [{ message: detail }] }).filter(([pointer, faults]) => {
    const control = controlAt(places, pointer);
    return !control
      || !showError(control, faults.map(({ code, message }) => ({ lead: say(code === "missing" ? "fault.missing" : "fault.other"), text: message })));
  });
  showProblem(
    strangeLink && el("p", say("strangeLink")),
    el("p", lead),
    lost.length > 0
      && el("ul", { class: "sentences", lang: "en" }, lost.flatMap(([pointer, faults]) => faults.map(({ message }) => el("li", pointer, " ", message)))));
  announce(lead);
}

async function showAnswer(answer, body, signal) {
  const owned = ownedNames(body.owned ?? []);
  [...owned, ...answer.purchases.map(({ itemId, name }) => [itemId, name])].forEach(([id, name]) => rememberName(id, name));
  showProblem(strangeLink && el("p", say("strangeLink")));
  const shown = {
    ...answer,
    telescopes: answer.telescopes.map((telescope, index) => ({
      ...telescope,
      name: body.telescopes[index].name ?? (body.telescopes[index].id ? telescope.name : say("telescopeNumber", { number: index + 1 })),
    })),
  };
  announce(showSummary(shown, handle));
  performance.mark("first-advice");
  showParts(shown);
  showPrintHead(form.state, shown, owned.map(([, name]) => name));
  fillPart("takeaway", takeawayOf(body, answer, () => location.origin + location.pathname + `#${linkOf(form.state)}`));
  await Promise.all([
    showLadder(body, signal), showCurve(body, signal), showPath(body, answer, signal), showOpinion(body, signal), showAlternatives(body, answer, signal),
  ]);
}

function showParts(answer) {
  const possible = answer.outcome !== "infeasible";
  const bought = new Set(answer.purchases.map(purchase => purchase.itemId));
  fillPart("views", possible && viewsOf(answer.telescopes, bought));
  fillPart("purchases", possible && purchasesOf(answer, form.state, handle));
  fillPart("targets", possible && targetsOf(answer.telescopes));
  fillPart("remarks", remarksOf(answer));
}

const handle = {
  leaveOut(id) {
    form.state.exclude.push(id);
    changed(true);
    advice.focus();
  },
  change({ askedDeg, widthDeg, ...limits }) {
    Object.keys(limits).filter(name => name in form.state).forEach(name => (form.state[name] = String(limits[name])));
    form.state.mustFrame.filter(row => numberOf(row.widthDeg) === askedDeg).forEach(row => (row.widthDeg = String(widthDeg)));
    changed(true);
    advice.focus();
  },
};

async function showLadder(body, signal) {
  const { blob } = await ask(recommendations, body, signal, "image/svg+xml");
  fillPart("ladder", blob && await ladderOf(blob));
}

/** The curve is the same for every budget on it. */
async function showCurve(body, signal) {
  if (form.state.budget !== curve.moved) {
    curve.reach = reachFor(Number(body.limits.budget), curve.reach);
  }

  const asked = withBudget({ ...body, explain: undefined }, curve.reach);
  if (JSON.stringify(asked) === curve.asked) {
    curve.move?.(body.limits.budget);
    return;
  }

  const { json } = await ask("/v1/spending-curves", asked, signal);
  curve.asked = json ? JSON.stringify(asked) : "";
  if (!json || json.points.length === 0) {
    curve.move = null;
    fillPart("curve");
    return;
  }

  const { content, move } = curveOf({ ...json, reach: curve.reach }, body.limits.budget, moveBudget);
  curve.move = move;
  fillPart("curve", content);
}

function moveBudget(budget, rebuild) {
  curve.moved = form.state.budget = budget;
  changed(rebuild);
  document.getElementById(idOf("budget")).value = budget;
}

async function showPath(body, answer, signal) {
  const { json } = answer.purchases.length > 1 ? await ask("/v1/buying-paths", { ...body, explain: undefined }, signal) : {};
  fillPart("path", json && pathOf(json, answer.currency));
}

/** Whoever has no list does without what shows one. */
async function showOpinion(body, signal) {
  const { json } = form.state.shoppingList.length > 0 ? await ask("/v1/second-opinions", secondOpinionOf(body, form.state.shoppingList), signal) : {};
  fillPart("opinion", json && (await import("./opinion.js")).opinionOf(json));
}

async function showAlternatives(body, answer, signal) {
  const { json } = answer.purchases.length > 0 ? await ask(recommendations, { ...body, explain: { ifUnavailable: true } }, signal) : {};
  if (json) {
    showUnavailable(json);
  }
}

/** For whoever hears the page, once the typing has paused. */
function announce(sentence) {
  clearTimeout(news);
  news = setTimeout(() => {
    document.getElementById("news").textContent = sentence;
  }, newsPauseMs);
}
