/* Shows what the practice room says, and tells it what the learner does. Every rule is in the compiled checker. */
(() => {
  const {element} = page;
  const {set, course, skills} = page.data();
  const store = page.store("ampersheet-practice-" + set);
  const erased = page.store("ampersheet-practice-erased-" + set);
  const SIGNS = {right: "✓ ", open: "… ", form: "… ", wrong: "✗ ", follows: "↳ ", none: ""};
  const NARROW = "(max-width: 61.99rem)";
  let now;
  let problem;
  let places = [];
  let hints = 0;

  const today = () => {
    const date = new Date();
    return Math.round(Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) / 86400000);
  };
  const chance = () => Math.floor(Math.random() * 1e6);
  const inGroups = (flat, size) => {
    const groups = [];
    for (let i = 0; i < flat.length; i += size) {
      groups.push(Array.from(flat).slice(i, i + size));
    }
    return groups;
  };

  // ------------------------------------------------------------------------------------------------ keeping

  /* What names this tab, and the problem that it showed: kept as long as the tab, where the browser allows it. */
  const tab = {
    name: Array.from(crypto.getRandomValues(new Uint8Array(6)), byte => (byte % 36).toString(36)).join(""),
    shown(id) {
      try {
        if (id !== undefined) {
          sessionStorage.setItem("ampersheet-practice-" + set, id);
        }
        return sessionStorage.getItem("ampersheet-practice-" + set) || "";
      } catch (refused) {
        return "";
      }
    }
  };

  /* Another tab may have written since: both are kept. */
  let written = "";
  const joinStored = () => {
    const stored = store.read();
    if (typeof stored === "string" && stored !== written) {
      practiceJoin(stored);
    }
  };

  const keep = () => {
    joinStored();
    written = practiceStored();
    store.write(written);
    element("kept").textContent = store.works
        ? page.says("page.practice.kept")
        : page.says("page.practice.kept.not");
  };

  const told = flat => {
    const values = {};
    inGroups(flat, 2).forEach(([name, value]) => { values[name] = value; });
    return values;
  };

  // ------------------------------------------------------------------------------------------------ texts of problems

  /* A text is told by what it shares with another, the base, and with its own beginning; each piece is counted from the end
     of the one before. */
  const spelled = (pieces, base) => {
    let text = "";
    let after = 0;
    for (let i = 0; i < pieces.length; i++) {
      if (typeof pieces[i] === "string") {
        text += pieces[i];
      } else {
        const from = after + pieces[i];
        const length = pieces[++i];
        after = from + length;
        text += from < base.length ? base.substr(from, length) : text.substr(from - base.length, length);
      }
    }
    return text;
  };

  const exampleTexts = new Map();
  const exampleText = template => {
    if (!exampleTexts.has(template)) {
      exampleTexts.set(template, spelled(template.example, ""));
    }
    return exampleTexts.get(template);
  };

  /* The first variant of a template is told by its example, the others by both. */
  const problemOf = (skill, variant) => {
    const of = skills[skill];
    const given = of.variants[variant];
    const example = exampleText(of.templates[given.template]);
    const first = of.variants.findIndex(other => other.template === given.template);
    return JSON.parse(spelled(given.told, first === variant ? example : example + spelled(of.variants[first].told, example)));
  };

  const parsed = html => {
    const holder = document.createElement("template");
    holder.innerHTML = html;
    return holder.content;
  };

  /* A working with one wrong line: each can be named until that one is, which then has a place to mend it. */
  const faultyLines = () => {
    const shown = parsed(problem.faulty);
    const words = document.createElement("p");
    words.id = "faulty-said";
    words.tabIndex = -1;
    words.textContent = now.line;
    shown.prepend(words);
    for (const line of shown.querySelectorAll(".steps > li")) {
      if (!now.found) {
        const named = button(page.says("page.practice.step-is-wrong", {step: line.value}), () => nameLine(line.value));
        named.disabled = line.value === Number(now.named);
        line.append(named);
      } else if (line.value === Number(now.named)) {
        line.dataset.faulty = "";
        line.append(parsed(problem.places.full).querySelector('.steps > li[value="' + line.value + '"] [data-question]'));
      }
    }
    return shown;
  };

  const nameLine = step => {
    practiceGo("line", String(step), today(), 0);
    keep();
    now = told(practiceNow());
    layOut();
    update();
    element("faulty-said").focus();
  };

  /* Between the example and the question alone, lines of the solution stand where a step is not left blank. */
  const placesShown = () => {
    if (now.form === "faulty") {
      return faultyLines();
    }
    if (now.form === "bare") {
      return parsed(problem.places.bare);
    }
    const shown = parsed(problem.places.full);
    if (now.form === "faded") {
      const blank = now.blank.split(" ").map(Number);
      const solution = parsed(problem.solution);
      for (const line of shown.querySelectorAll(".steps > li")) {
        if (!blank.includes(line.value)) {
          line.replaceWith(solution.querySelector('.steps > li[value="' + line.value + '"]'));
        }
      }
      const open = Array.from(shown.querySelectorAll("[data-question]"), place => place.dataset.question);
      for (const name of shown.querySelectorAll("ul > li > strong:first-child")) {
        if (!open.includes(name.textContent)) {
          name.parentElement.remove();
        }
      }
    }
    return shown;
  };

  // ------------------------------------------------------------------------------------------------ showing

  const questions = () => places.map(place => place.question);

  const show = moveFocus => {
    now = told(practiceNow());
    tab.shown(now.id);
    const skill = skills[now.skill];
    const template = skill.templates[skill.variants[now.variant].template];
    problem = problemOf(Number(now.skill), Number(now.variant));
    const example = JSON.parse(exampleText(template));
    document.body.dataset.support = now.form;
    element("yours-title").textContent = template.title;
    element("tags").textContent = template.tags;
    element("setting").innerHTML = problem.setting;
    element("example-body").innerHTML = example.setting + example.solution;
    cautionOnce();
    element("yours").dataset.variant = now.skill + "/" + now.variant;
    element("yours").dataset.support = now.form;
    const typed = layOut();
    element("sure").querySelectorAll("input").forEach(option => { option.checked = false; });
    unled();
    askSolution(false);
    element("hints").textContent = "";
    hints = 0;
    hintsTaken().forEach(hint => addHint(hint, false));
    say("");
    if (now.checked) {
      sayPlaces(inGroups(practiceLook(problem.key, questions()), 3));
    }
    element("solution").hidden = true;
    if (now.ended === "shown") {
      showSolution(false);
    }
    facing(now.form === "full" && !now.ended && !typed ? "example" : "yours");
    update();
    page.reachable(element("desk"));
    if (moveFocus) {
      const narrow = getComputedStyle(element("yours")).display === "none";
      element(narrow ? "example-title" : "yours-title").focus();
      window.scrollTo(0, 0);
    }
  };

  /* What the problem itself says, its example need not say again. */
  const cautionOnce = () => {
    const said = Array.from(element("setting").querySelectorAll(".caution"), caution => caution.textContent);
    for (const caution of element("example-body").querySelectorAll(".caution")) {
      if (said.includes(caution.textContent)) {
        caution.remove();
      }
    }
  };

  const layOut = () => {
    element("places").replaceChildren(placesShown());
    places = page.places(element("places"));
    return fill();
  };

  /* What was typed stands where it was, but for the place in which the learner is typing. */
  const fill = () => {
    const typed = told(practiceTyped());
    for (const place of places) {
      if (!place.element.contains(document.activeElement)) {
        place.fill(typed[place.question] || "");
      }
    }
    return Object.values(typed).some(text => text !== "");
  };

  /* On a phone, one of the two at a time. */
  const facing = which => {
    document.body.dataset.facing = which;
    element("show-example").setAttribute("aria-pressed", String(which === "example"));
    element("show-yours").setAttribute("aria-pressed", String(which === "yours"));
    page.reachable(element("desk"));
  };

  /* Seen and heard; the second part is only heard, for it is seen where it belongs. */
  const say = (text, heard = "") => {
    const more = document.createElement("span");
    more.className = "unseen";
    more.textContent = heard;
    element("verdict").replaceChildren(text, more);
  };

  const sayPlaces = found => {
    const byName = new Map(found.map(([question, kind, message]) => [question, {kind, message}]));
    for (const place of places) {
      const {kind, message} = byName.get(place.question);
      place.say(kind, SIGNS[kind] + message);
    }
  };

  /* A verdict on what is typed no more still helps to mend it, but is no verdict on what stands there now. */
  const outdate = place => {
    const said = place && place.element.querySelector(".said").textContent;
    if (said && place.element.dataset.said !== "read") {
      place.say("read", page.says("page.practice.before-change", {said}));
    }
  };

  const button = (text, pressed) => {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = text;
    made.addEventListener("click", pressed);
    return made;
  };

  const update = () => {
    now = told(practiceNow());
    element("row").textContent = now.progress;
    const unfound = now.form === "faulty" && !now.found;
    element("hint").disabled = now.ended !== "" || unfound;
    element("solve").disabled = !element("solution").hidden;
    element("answers").querySelector(".main").disabled = now.ended !== "" || unfound;
    element("answers-title").hidden = now.form === "faulty";
    element("find-faulty").hidden = !now.faulty || now.form === "faulty" && !now.ended;
    element("sure").disabled = now.ended !== "" || unfound;
    element("onward").hidden = now.ended === "";
    element("onward").className = "main";
    element("later").hidden = now.ended !== "" || skills.length < 2;
    element("support").value = now.support;
    element("tally").textContent = page.says("page.practice.skills.tally", {settled: now.settled, all: skills.length});
    element("aside-on").checked = now.aside === "asked";
    aside();
    map();
    mistakes();
    element("record").value = practiceStored();
  };

  /* The map of skills: a row for each, with its state in words; lines from what builds to what is built on. */
  const map = () => {
    const list = element("skill-list");
    const at = Array.from(list.children).findIndex(item => item.contains(document.activeElement));
    list.textContent = "";
    const rows = inGroups(practiceMap(today()), 4);
    rows.forEach(([name, state, kind, after], index) => {
      const item = document.createElement("li");
      item.dataset.state = kind;
      const choose = button(name, () => go("choose", String(index)));
      if (index === Number(now.skill)) {
        choose.setAttribute("aria-current", "step");
      }
      const note = document.createElement("span");
      note.textContent = after
          ? page.says("page.practice.map.builds-on", {state, skills: practiceList(after.split(" ").map(before => rows[before][0]))})
          : state;
      item.append(choose, " ", note);
      list.append(item);
      if (index === at) {
        choose.focus();
      }
    });
    mapLines(rows);
  };

  const SVG = "http://www.w3.org/2000/svg";
  const drawn = (name, attributes) => {
    const shape = document.createElementNS(SVG, name);
    Object.entries(attributes).forEach(([key, value]) => shape.setAttribute(key, value));
    return shape;
  };

  /* A ring for what is open, half filled for what is begun, full for what is settled, with a ring around it when it is due. */
  const mapLines = rows => {
    const around = element("skill-map");
    around.querySelector("svg")?.remove();
    if (!element("skills").querySelector("details").open) {
      return;
    }
    const height = around.clientHeight;
    const figure = drawn("svg", {width: 48, height, viewBox: "0 0 48 " + height, role: "img",
      "aria-label": page.says("page.practice.map.drawn")});
    const top = around.getBoundingClientRect().top;
    const middles = Array.from(element("skill-list").children, item => {
      const box = item.querySelector("button").getBoundingClientRect();
      return box.top - top + box.height / 2;
    });
    rows.forEach(([, , , after], index) => (after ? after.split(" ") : []).forEach(before => {
      const from = middles[before];
      const to = middles[index];
      const out = Math.max(4, 30 - 8 * Math.abs(index - before));
      figure.append(drawn("path", {d: "M33 " + from + "C" + out + " " + from + " " + out + " " + to + " 31 " + to, class: "edge"}),
          drawn("path", {d: "M26 " + (to - 4) + "L32 " + to + "L26 " + (to + 4) + "Z", class: "head"}));
    }));
    rows.forEach(([, , kind], index) => {
      const y = middles[index];
      if (kind === "due") {
        figure.append(drawn("circle", {cx: 39, cy: y, r: 8.5, class: "ring"}));
      }
      figure.append(drawn("circle", {cx: 39, cy: y, r: 6, class: kind === "settled" || kind === "due" ? "full" : "ring"}));
      if (kind === "begun") {
        figure.append(drawn("path", {d: "M39 " + (y - 6) + "A6 6 0 0 0 39 " + (y + 6) + "Z", class: "full"}));
      }
    });
    around.prepend(figure);
  };


  const mistakes = () => {
    const all = inGroups(practiceMistakes(), 6);
    element("mistakes-shown").hidden = all.length === 0;
    element("mistakes-counted").textContent = page.saysOf("page.practice.mistakes.kinds", all.length);
    if (element("mistakes-shown").open) {
      listMistakes(all);
    }
    const [right, wrong, luckily, rightly] = now.sureness.split(" ");
    element("sureness").textContent = page.says("page.practice.mistakes.sureness", {right, wrong, luckily, rightly});
  };

  const listMistakes = all => {
    element("mistakes").replaceChildren(...all.map(([times, sure, day, skill, variant, question], index) => {
      const item = document.createElement("li");
      const text = document.createElement("p");
      text.textContent = practiceMistake(index, problemOf(Number(skill), Number(variant)).key);
      const when = document.createElement("p");
      when.className = "lead";
      when.textContent = page.saysOf(Number(sure) > 0 ? "page.practice.mistakes.when-sure" : "page.practice.mistakes.when", Number(times), {
        sure, day, title: skills[skill].templates[skills[skill].variants[variant].template].title, place: placeName(question)}) + " ";
      item.append(text, when, button(page.says("page.practice.mistakes.again"), () => go("again", String(index))));
      return item;
    }));
  };

  // ------------------------------------------------------------------------------------------------ checking

  const typeAll = () => places.forEach(place => practiceType(place.question, place.typed()));

  /* On a phone, the place from which one was led to the example, and why. */
  let led = null;
  const unled = () => {
    led = null;
    element("led").hidden = true;
  };

  const check = event => {
    event.preventDefault();
    if (now.ended) {
      return;
    }
    typeAll();
    const sure = element("sure").querySelector("input:checked");
    const [sentence, stop, sureAndWrong, ...rest] = practiceCheck(problem.key, questions(), sure ? sure.value : "", today());
    const found = inGroups(rest, 3);
    sayPlaces(found);
    withdrawHints();
    keep();
    update();
    const at = places.find(place => place.question === stop);
    const [, , message] = found.find(([question]) => question === stop) || ["", "", ""];
    say(sentence, at ? " " + message : element("aside").hidden ? "" : " " + page.says("page.practice.aside.waits"));
    if (!at) {
      element("onward").focus({preventScroll: true});
      element("verdict").scrollIntoView({block: "nearest"});
      return;
    }
    at.focus();
    cuePlace(at.question);
    if (sureAndWrong) {
      sure.checked = false;
      facing("example");
      if (matchMedia(NARROW).matches) {
        led = at;
        element("led").textContent = sentence + " " + message;
        element("led").hidden = false;
        element("example-title").focus();
        element("led").scrollIntoView({block: "nearest"});
      }
    }
  };

  // ------------------------------------------------------------------------------------------------ a question beside it

  const aside = () => {
    const [text, chosen, said, right, step, ...choices] = practiceAside();
    const box = element("aside");
    box.hidden = text === undefined;
    if (box.hidden) {
      return;
    }
    element("aside-text").textContent = text;
    element("aside-choices").replaceChildren(...choices.map(choice => {
      const made = button(choice, () => answerAside(choice));
      made.disabled = chosen !== "";
      if (chosen && (choice === chosen || choice === right)) {
        made.dataset.said = choice === right ? "right" : "wrong";
        made.textContent = (choice === right ? "✓ " : "✗ ") + choice;
      }
      return made;
    }));
    const words = document.createElement("p");
    words.textContent = said;
    element("aside-said").replaceChildren(...(said ? [words] : []),
        ...(step > 0 ? [parsed(problem.hints[step - 1].rule)] : []));
  };

  const answerAside = choice => {
    typeAll();
    practiceGo("answer", choice, today(), 0);
    keep();
    aside();
    element("aside-title").focus();
  };

  const askAside = asked => {
    typeAll();
    practiceGo("aside", asked ? "asked" : "off", today(), 0);
    keep();
    update();
  };

  // ------------------------------------------------------------------------------------------------ cueing

  /* What the step at hand is about is drawn heavier, in both figures, and the captions name the step; so does its line in
     the example. */
  const cue = step => {
    const parts = new Set(problem.hints[step - 1].parts);
    for (const under of [element("setting"), element("example-body")]) {
      for (const figure of under.querySelectorAll("figure")) {
        let any = false;
        for (const part of figure.querySelectorAll("[data-part]")) {
          const cued = parts.has(part.dataset.part);
          part.classList.toggle("cued", cued);
          any = any || cued;
        }
        figure.querySelector(".step-now")?.remove();
        if (any) {
          const mark = document.createElement("b");
          mark.className = "step-now";
          mark.textContent = " · " + page.says("practice.place.step", {step});
          figure.querySelector("figcaption").append(mark);
        }
      }
    }
    for (const line of element("example-body").querySelectorAll(".steps > li")) {
      line.classList.toggle("cued", line.value === step);
    }
  };

  const cuePlace = question => {
    const hint = problem.hints.find(hint => hint.place === question);
    if (hint) {
      cue(hint.step);
    }
  };

  const cueLine = event => {
    const line = event.target.closest(".steps > li");
    if (line) {
      cue(line.value);
    }
  };

  // ------------------------------------------------------------------------------------------------ helping

  const HINT_TITLES = {typed: "page.practice.hint.typed", example: "page.practice.hint.example", rule: "page.practice.hint.rule",
    formula: "page.practice.hint.formula", numbers: "page.practice.hint.numbers", line: "page.practice.hint.line"};

  /* The equation of a step, as far as its numbers put in or with its result, which is its last row. */
  const equation = (step, withResult) => {
    const shown = parsed(problem.solution).querySelector('.steps > li[value="' + step + '"] .equation');
    const rows = shown.querySelectorAll("mtr");
    if (withResult || rows.length < 2) {
      return withResult ? shown : parsed(problem.hints[step - 1].formula);
    }
    rows[rows.length - 1].remove();
    const math = shown.querySelector("math");
    math.ariaLabel = math.ariaLabel.replace(/;[^;]*$/, "");
    return shown;
  };

  const hintBody = (kind, step, text) => {
    const hint = problem.hints[step - 1];
    const paragraph = document.createElement("p");
    switch (kind) {
      case "typed":
        paragraph.textContent = text;
        return paragraph;
      case "example":
        paragraph.textContent = page.says("page.practice.hint.read-line", {step});
        return paragraph;
      case "numbers":
      case "line":
        return equation(step, kind === "line");
      default:
        return parsed(hint[kind]);
    }
  };

  const placeName = question => question.startsWith("step ")
      ? page.says("practice.place.step", {step: question.slice("step ".length)})
      : page.says("practice.place.answer", {question});

  const addHint = ([kind, number, text, place], cued) => {
    const step = Number(number);
    const shown = document.createElement("div");
    shown.className = "hinted";
    if (kind === "typed") {
      shown.dataset.typed = text;
    }
    const title = document.createElement("h3");
    title.textContent = page.says(step > 0 ? "page.practice.hint.title.step" : "page.practice.hint.title.place",
        {number: ++hints, step, place: placeName(place), kind: page.says(HINT_TITLES[kind])});
    shown.append(title, hintBody(kind, step, text));
    element("hints").append(shown);
    if (step > 0 && cued) {
      cue(step);
    }
    page.reachable(shown);
    if (cued) {
      shown.scrollIntoView({block: "nearest"});
    }
  };

  const hintsTaken = () => inGroups(practiceHintsTaken(problem.key, questions()), 4);

  /* A hint on what is typed no more, or that a verdict says by now, goes. */
  const withdrawHints = () => {
    const shown = element("hints").querySelectorAll("[data-typed]");
    if (shown.length > 0) {
      const hold = hintsTaken().map(([, , text]) => text);
      shown.forEach(hint => hold.includes(hint.dataset.typed) || hint.remove());
    }
  };

  const nextHint = () => {
    typeAll();
    const hint = practiceHint(problem.key, questions());
    if (hint.length > 0) {
      addHint(hint, true);
    } else {
      say(practiceSays("hints"));
    }
    keep();
    update();
  };

  const showSolution = moveFocus => {
    element("solution-body").innerHTML = problem.solution;
    element("solution").hidden = false;
    page.reachable(element("solution"));
    if (moveFocus) {
      element("solution-title").focus();
    }
  };

  /* Before it is right, the solution ends the problem: that is asked first. */
  const askSolution = asked => {
    element("solve-asked").hidden = !asked;
    element("solve").setAttribute("aria-expanded", String(asked));
  };

  const askOrSolve = () => {
    if (now.ended) {
      solve();
      return;
    }
    askSolution(true);
    element("solve-asked").scrollIntoView({block: "nearest"});
    element("solve-no").focus();
  };

  const keepSolving = () => {
    askSolution(false);
    element("solve").focus();
  };

  const solve = () => {
    typeAll();
    askSolution(false);
    if (!now.ended) {
      say(practiceSays("solution"));
    }
    practiceGo("solution", "", today(), 0);
    showSolution(true);
    keep();
    update();
  };

  // ------------------------------------------------------------------------------------------------ going on

  const go = (event, argument = "") => {
    typeAll();
    joinStored();
    practiceGo(event, argument, today(), chance());
    keep();
    show(true);
  };

  const lookAtExample = () => {
    facing("example");
    practiceGo("example", "", today(), 0);
    keep();
  };

  const takeOver = (text, from) => {
    const refused = practiceJoin(text);
    if (refused === "") {
      keep();
      fill();
      update();
    }
    element("kept-said").textContent = refused || page.says("page.practice.text.taken", {from});
  };

  let erasing = false;
  const erase = () => {
    if (!erasing) {
      erasing = true;
      element("clear").textContent = page.says("page.practice.erase.really");
      element("kept-said").textContent = page.says("page.practice.erase.again");
      return;
    }
    erasing = false;
    element("clear").textContent = page.says("page.practice.erase");
    // Tells other tabs, and leaves nothing behind.
    erased.write(1);
    erased.clear();
    store.clear();
    practiceStart(course, "", [tab.name, ""], today(), chance());
    keep();
    show(false);
    element("kept-said").textContent = page.says("page.practice.erase.done");
  };

  element("answers").addEventListener("submit", check);
  element("places").addEventListener("input", event => {
    typeAll();
    outdate(places.find(place => place.element.contains(event.target)));
    withdrawHints();
    keep();
  });
  element("places").addEventListener("focusin", event => {
    const place = event.target.closest("[data-question]");
    if (place) {
      cuePlace(place.dataset.question);
    }
  });
  element("example-body").addEventListener("pointerover", cueLine);
  // Wherever the example is in the way.
  element("skip").addEventListener("click", () => facing("yours"));
  element("hint").addEventListener("click", nextHint);
  element("solve").addEventListener("click", askOrSolve);
  element("solve-yes").addEventListener("click", solve);
  element("solve-no").addEventListener("click", keepSolving);
  element("solve-asked").addEventListener("keydown", event => {
    if (event.key === "Escape") {
      keepSolving();
    }
  });
  element("another").addEventListener("click", () => go("another"));
  element("onward").addEventListener("click", () => go("next"));
  element("later").addEventListener("click", () => go("next"));
  element("find-faulty").addEventListener("click", () => go("faulty"));
  element("show-example").addEventListener("click", lookAtExample);
  element("show-yours").addEventListener("click", () => facing("yours"));
  element("to-yours").addEventListener("click", () => {
    facing("yours");
    if (led) {
      led.focus();
      unled();
      return;
    }
    element("yours-title").focus();
    element("yours-title").scrollIntoView();
  });
  element("aside-off").addEventListener("click", () => {
    askAside(false);
    element("verdict").textContent = practiceSays("aside");
    element(now.ended ? "onward" : "hint").focus();
  });
  element("aside-on").addEventListener("change", event => askAside(event.target.checked));
  /* By keys one passes over choices on the way to another: what counts then is Enter, or leaving the list. */
  let byKeys = false;
  const support = () => {
    byKeys = false;
    if (element("support").value !== now.support) {
      typeAll();
      practiceGo("support", element("support").value, today(), 0);
      keep();
      show(false);
    }
  };
  element("support").addEventListener("keyup", () => { byKeys = false; });
  element("support").addEventListener("keydown", event => {
    byKeys = event.key !== "Enter" && event.key !== " ";
    if (event.key === "Enter") {
      support();
    } else if (event.key === "Escape") {
      element("support").value = now.support;
    }
  });
  element("support").addEventListener("change", () => byKeys || support());
  element("support").addEventListener("blur", support);
  element("export").addEventListener("click", () => {
    page.saveFile("practice-" + set + ".txt", "text/plain;charset=utf-8", practiceStored());
    element("kept-said").textContent = page.says("page.practice.saved", {file: "practice-" + set + ".txt"});
  });
  element("import").addEventListener("change", event => {
    const [file] = event.target.files;
    if (file) {
      file.text().then(text => takeOver(text, file.name));
      event.target.value = "";
    }
  });
  element("take-over").addEventListener("click", () => takeOver(element("pasted").value.trim(), page.says("page.practice.text.the-text")));
  element("clear").addEventListener("click", erase);
  element("clear").addEventListener("blur", () => {
    erasing = false;
    element("clear").textContent = page.says("page.practice.erase");
  });
  element("calculated").addEventListener("input", event => {
    element("calculation").textContent = event.target.value.trim() ? calculate(event.target.value) : "";
  });
  element("skills").querySelector("details").addEventListener("toggle", map);
  element("mistakes-shown").addEventListener("toggle", mistakes);
  element("desk").addEventListener("toggle", () => page.reachable(element("desk")), true);
  /* Another tab wrote: what it knows is taken over at once; if it erased everything, so does this one. */
  window.addEventListener("storage", event => {
    if (event.key === "ampersheet-practice-erased-" + set && event.newValue !== null) {
      location.reload();
    } else if (event.key === "ampersheet-practice-" + set && event.newValue !== null) {
      joinStored();
      fill();
      update();
    }
  });
  let wasNarrow = matchMedia(NARROW).matches;
  window.addEventListener("resize", () => {
    const narrow = matchMedia(NARROW).matches;
    if (narrow && !wasNarrow && (places.some(place => place.typed() !== "") || element("yours").contains(document.activeElement))) {
      facing("yours");
    }
    wasNarrow = narrow;
    page.reachable(element("desk"));
    map();
  });

  page.lookUp();
  for (const id of ["skills", "desk", "keeping"]) {
    element(id).hidden = false;
  }
  const stored = store.read();
  const refused = practiceStart(course, typeof stored === "string" ? stored : "", [tab.name, tab.shown()], today(), chance());
  if (refused || stored !== null && typeof stored !== "string") {
    page.store("ampersheet-practice-unread-" + set).write(stored);
    element("kept-said").textContent = page.says("page.practice.laid-aside") + " "
        + (refused || page.says("page.practice.earlier-form"));
    store.clear();
  }
  show(false);
  keep();
  performance.mark("ready");
})();
