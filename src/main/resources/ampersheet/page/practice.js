(() => {
  const {element} = page;
  const {set, skills} = page.data();
  const store = page.store("ampersheet-practice-" + set);
  /* So many problems of a skill, one after the other and without a slip or a hint, and it is settled. */
  const TO_SETTLE = 2;
  const SUPPORTS = ["full", "faded", "bare"];
  /* Not yet an answer, or right but for its form: no slip, yet nothing to go on from. */
  const FORM = ["BLANK", "UNREADABLE", "AMBIGUOUS", "UNIT_MISSING", "OTHER_SCALE", "TOO_COARSE"];

  const fresh = () => ({
    queue: skills.map((skill, index) => index),
    support: "auto",
    skills: skills.map(skill => ({
      next: Math.floor(Math.random() * skill.variants.length), seen: 0, right: 0, slips: 0, unaided: 0, stage: 0, wrong: false
    })),
    current: null
  });

  const fits = kept => kept && Array.isArray(kept.skills) && kept.skills.length === skills.length
      && kept.skills.every(of => Number.isInteger(of.unaided));
  const kept = store.read();
  let state = fits(kept) ? kept : fresh();
  let problem;
  let places = [];

  const keep = () => {
    store.write(state);
    element("kept").textContent = store.works
        ? "Progress stays in this browser, on this device."
        : "This browser keeps nothing for this page: save your progress as a file before you close it.";
  };

  /* A text is told by what it shares with another, the base, and with its own beginning. */
  const told = (pieces, base) => {
    let text = "";
    for (let i = 0; i < pieces.length; i++) {
      if (typeof pieces[i] === "string") {
        text += pieces[i];
      } else {
        const from = pieces[i];
        const length = pieces[++i];
        text += from < base.length ? base.substr(from, length) : text.substr(from - base.length, length);
      }
    }
    return text;
  };

  const exampleTexts = new Map();
  const exampleText = template => {
    if (!exampleTexts.has(template)) {
      exampleTexts.set(template, told(template.example, ""));
    }
    return exampleTexts.get(template);
  };

  /* The first variant of a template is told by its example, the others by both. */
  const variantText = (skill, variant) => {
    const given = skill.variants[variant];
    const example = exampleText(skill.templates[given.template]);
    const first = skill.variants.findIndex(other => other.template === given.template);
    return told(given.told, first === variant ? example : example + told(skill.variants[first].told, example));
  };

  const plural = (count, one, many) => count + " " + (count === 1 ? one : many);

  // ------------------------------------------------------------------------------------------------ giving out

  const skillNow = () => state.current.skill;
  const progress = () => state.skills[skillNow()];

  const supportFor = index => state.support === "auto" ? SUPPORTS[state.skills[index].stage] : state.support;

  const give = (index, moveFocus = true) => {
    const of = state.skills[index];
    const variant = of.next;
    of.next = (of.next + 1) % skills[index].variants.length;
    of.seen++;
    state.current = {skill: index, variant, support: supportFor(index), typed: {}, slipped: false, helped: false,
      hints: 0, solved: false, finished: false};
    keep();
    show(moveFocus);
  };

  const giveNext = () => {
    if (state.queue.length === 0) {
      state.queue = skills.map((skill, index) => index);
      state.skills.forEach(of => { of.unaided = 0; of.stage = SUPPORTS.length - 1; });
    }
    give(state.queue[0]);
  };

  // ------------------------------------------------------------------------------------------------ showing

  const show = moveFocus => {
    const {skill, variant, support} = state.current;
    const given = skills[skill].variants[variant];
    const template = skills[skill].templates[given.template];
    problem = JSON.parse(variantText(skills[skill], variant));
    const example = JSON.parse(exampleText(template));
    const shown = problem.places[support] ? support : "bare";
    document.body.dataset.support = shown;
    element("yours-title").textContent = template.title;
    element("tags").textContent = skills[skill].name + " · " + template.tags;
    element("setting").innerHTML = problem.setting;
    element("places").innerHTML = problem.places[shown];
    element("example-body").innerHTML = example.setting + example.solution;
    element("yours").dataset.variant = skill + "/" + variant;
    element("yours").dataset.support = shown;
    places = page.places(element("places"));
    for (const place of places) {
      place.fill(state.current.typed[place.question] || "");
    }
    element("hints").textContent = "";
    for (let i = 0; i < state.current.hints; i++) {
      addHint(i);
    }
    say("");
    element("solution").hidden = true;
    if (state.current.solved) {
      showSolution(false);
    }
    facing(shown === "full" && !state.current.finished && Object.keys(state.current.typed).length === 0 ? "example" : "yours");
    update();
    page.reachable(element("desk"));
    if (moveFocus) {
      const narrow = getComputedStyle(element("yours")).display === "none";
      element(narrow ? "example-title" : "yours-title").focus();
      window.scrollTo(0, 0);
    }
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

  const update = () => {
    const of = progress();
    const finished = state.current.finished;
    const all = skills[skillNow()].variants.length;
    element("row").textContent = (of.seen <= all ? "problem " + of.seen + " of " + all : "all " + all + " seen, they come round again")
        + " · " + of.unaided + " of " + TO_SETTLE + " solved without help";
    element("hint").disabled = finished || state.current.solved || state.current.hints >= hintsInAll();
    element("solve").disabled = state.current.solved;
    element("answers").querySelector(".main").disabled = finished || state.current.solved;
    element("onward").hidden = !(finished || state.current.solved);
    element("onward").className = "main";
    element("later").hidden = state.queue.length < 2;
    const settled = skills.length - new Set(state.queue).size;
    element("tally").textContent = settled + " of " + skills.length + " settled";
    const list = element("skill-list");
    list.textContent = "";
    skills.forEach((skill, index) => {
      const item = document.createElement("li");
      const button = document.createElement("button");
      const queued = state.queue.includes(index);
      const standing = state.skills[index];
      button.type = "button";
      button.textContent = skill.name;
      if (index === skillNow()) {
        button.setAttribute("aria-current", "step");
      }
      button.addEventListener("click", () => {
        state.queue = [index].concat(state.queue.filter(other => other !== index));
        give(index);
      });
      const note = document.createElement("span");
      note.textContent = (queued ? (standing.wrong ? "comes back" : standing.seen ? "begun" : "to come") : "settled")
          + (standing.right ? " · " + standing.right + " right at once" : "");
      item.append(button, " ", note);
      list.append(item);
    });
  };

  // ------------------------------------------------------------------------------------------------ checking

  const typedNow = () => {
    const typed = {};
    places.forEach(place => { typed[place.question] = place.typed(); });
    return typed;
  };

  const name = place => place.question.startsWith("step") ? "Step " + place.question.substring(5) : "Answer " + place.question;

  const readAs = verdict => {
    const plain = text => text.replace(/[\s\u00a0\u202f]/g, "");
    return verdict.understood && plain(verdict.understood) !== plain(verdict.typed) ? "Read as " + verdict.understood + ". " : "";
  };

  const kindOf = verdict => verdict.rung === "CORRECT" ? "right" : verdict.rung === "INCOMPLETE" ? "open"
      : FORM.includes(verdict.rung) ? "form" : "wrong";

  const SIGNS = {right: "✓ ", open: "… ", form: "… ", wrong: "✗ ", follows: "↳ "};

  /* In the order shown, which is that of the working; stops at the first that is not right. What follows from it by right steps is told, too. */
  const check = event => {
    event.preventDefault();
    if (state.current.finished || state.current.solved) {
      return;
    }
    const typed = typedNow();
    state.current.typed = typed;
    const verdicts = new Map(page.judge(problem.key, typed).map(verdict => [verdict.question, verdict]));
    let stop = null;
    let right = 0;
    for (const place of places) {
      const verdict = verdicts.get(place.question);
      verdict.typed = typed[place.question];
      const kind = kindOf(verdict);
      if (stop === null && kind === "right") {
        right++;
        place.say("right", SIGNS.right + readAs(verdict) + verdict.message);
      } else if (stop === null && kind === "open" && place !== places[places.length - 1]) {
        place.say("open", SIGNS.open + readAs(verdict) + verdict.message);
      } else if (stop === null) {
        stop = place;
        stop.verdict = verdict;
        place.say(kind, SIGNS[kind] + readAs(verdict)
            + (verdict.rung === "BLANK" && right > 0 ? "Now this one." : verdict.message));
      } else if (verdict.rung === "CONSISTENT_WITH_EARLIER") {
        place.say("follows", SIGNS.follows + readAs(verdict) + verdict.message);
      } else {
        place.say("none", "");
      }
    }
    if (stop === null) {
      finish();
    } else {
      stopped(stop, right);
    }
    keep();
    update();
  };

  const stopped = (stop, right) => {
    const kind = kindOf(stop.verdict);
    const before = right > 0 ? plural(right, "place is", "places are") + " right. " : "";
    if (kind === "wrong") {
      if (!state.current.slipped) {
        progress().slips++;
      }
      state.current.slipped = true;
      progress().unaided = 0;
      progress().wrong = true;
    }
    const blank = stop.verdict.rung === "BLANK";
    say(before + name(stop) + (blank ? " is still open." : kind === "wrong" ? " is not right yet: look again, or take the next hint."
        : " needs another form."), blank ? "" : " " + readAs(stop.verdict) + stop.verdict.message);
    stop.focus();
  };

  const finish = () => {
    const of = progress();
    state.current.finished = true;
    const unaided = !state.current.slipped && !state.current.helped;
    if (unaided) {
      of.unaided++;
      of.right++;
      of.stage = Math.min(of.stage + 1, SUPPORTS.length - 1);
    } else if (state.current.slipped) {
      of.stage = Math.max(of.stage - 1, 0);
    }
    const moves = of.unaided >= TO_SETTLE;
    if (moves) {
      moveOn();
    }
    say("All right" + (unaided ? "" : state.current.slipped ? " in the end" : ", with a hint") + ". "
        + (state.queue.length === 0
            ? "Every skill is settled. Going on begins again, with the question only."
            : moves && state.queue.includes(skillNow()) ? "On to the next skill; this one comes back once more, because it went wrong on the way."
            : moves ? "This skill is settled: on to the next."
            : unaided ? "One more without help settles this skill."
            : "Solve " + TO_SETTLE + " without help, one after the other, to settle this skill."));
    element("onward").hidden = false;
    element("onward").focus();
  };

  /* A skill that went wrong on the way comes back after three others, or last. */
  const moveOn = () => {
    const of = progress();
    const skill = skillNow();
    state.queue = state.queue.filter(other => other !== skill);
    if (of.wrong) {
      state.queue.splice(Math.min(3, state.queue.length), 0, skill);
    }
    of.wrong = false;
    of.unaided = 0;
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
          const now = document.createElement("b");
          now.className = "step-now";
          now.textContent = " · step " + step;
          figure.querySelector("figcaption").append(now);
        }
      }
    }
    for (const line of element("example-body").querySelectorAll(".steps > li")) {
      line.classList.toggle("cued", line.value === step);
    }
  };

  const cuePlace = event => {
    const place = event.target.closest("[data-question]");
    const hint = place && problem.hints.find(hint => hint.place === place.dataset.question);
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

  const hintsInAll = () => problem.hints.length * 2;

  /* The steps that matter for the place where the work stands, each in words and then in symbols. */
  const addHint = number => {
    const hint = problem.hints[Math.floor(number / 2)];
    const shown = document.createElement("div");
    shown.className = "hinted";
    const title = document.createElement("h3");
    title.textContent = "Hint " + (number + 1) + ": step " + hint.step + (number % 2 ? " in symbols" : "");
    const body = document.createElement("div");
    body.innerHTML = number % 2 ? hint.line : hint.words;
    shown.append(title, body);
    element("hints").append(shown);
    cue(hint.step);
    page.reachable(shown);
  };

  /* Hints of steps that are already right would tell nothing. */
  const nextHint = () => {
    const right = new Set(places.filter(place => place.element.dataset.said === "right").map(place => place.question));
    while (state.current.hints < hintsInAll() && right.has(problem.hints[Math.floor(state.current.hints / 2)].place)) {
      state.current.hints++;
    }
    if (state.current.hints < hintsInAll()) {
      addHint(state.current.hints);
      state.current.hints++;
      state.current.helped = true;
    }
    if (state.current.hints >= hintsInAll()) {
      say("These are all the hints. What is left is the worked solution.");
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

  const solve = () => {
    if (!state.current.finished) {
      state.current.helped = true;
      progress().unaided = 0;
      progress().wrong = true;
      progress().stage = Math.max(progress().stage - 1, 0);
      say("Read the worked solution, then take another one like this.");
    }
    state.current.solved = true;
    state.current.typed = typedNow();
    showSolution(true);
    keep();
    update();
  };

  // ------------------------------------------------------------------------------------------------ keeping

  const exported = () => JSON.stringify({
    set, support: state.support, waiting: state.queue.map(index => skills[index].name),
    skills: state.skills.map((of, index) => ({skill: skills[index].name, given: of.seen, rightAtOnce: of.right,
      withSlips: of.slips, withoutHelp: of.unaided, variants: skills[index].variants.length}))
  }, null, 2) + "\n";

  let clearing = false;
  const clear = () => {
    if (!clearing) {
      clearing = true;
      element("clear").textContent = "Really clear all progress?";
      element("kept-said").textContent = "Press again to clear all progress in this set.";
      return;
    }
    clearing = false;
    element("clear").textContent = "Clear progress";
    store.clear();
    state = fresh();
    giveNext();
    element("kept-said").textContent = "All progress in this set is cleared.";
  };

  element("answers").addEventListener("submit", check);
  element("places").addEventListener("input", () => {
    state.current.typed = typedNow();
    keep();
  });
  element("places").addEventListener("focusin", cuePlace);
  element("example-body").addEventListener("pointerover", cueLine);
  element("hint").addEventListener("click", nextHint);
  element("solve").addEventListener("click", solve);
  element("another").addEventListener("click", () => give(skillNow()));
  element("onward").addEventListener("click", () => {
    if (state.queue.includes(skillNow()) && !state.current.finished) {
      give(skillNow());
    } else {
      giveNext();
    }
  });
  element("later").addEventListener("click", () => {
    state.queue = state.queue.filter(other => other !== skillNow()).concat([skillNow()]);
    giveNext();
  });
  element("show-example").addEventListener("click", () => facing("example"));
  element("show-yours").addEventListener("click", () => facing("yours"));
  element("to-yours").addEventListener("click", () => {
    facing("yours");
    element("yours-title").focus();
    element("yours-title").scrollIntoView();
  });
  element("support").value = state.support;
  element("support").addEventListener("change", event => {
    state.support = event.target.value;
    if (!state.current.finished && !state.current.solved) {
      state.current.support = supportFor(skillNow());
      state.current.typed = typedNow();
      show(false);
    }
    keep();
  });
  element("export").addEventListener("click", () => {
    page.saveFile("practice-" + set + ".json", "application/json", exported());
    element("kept-said").textContent = "Saved as practice-" + set + ".json.";
  });
  element("clear").addEventListener("click", clear);
  element("clear").addEventListener("blur", () => {
    clearing = false;
    element("clear").textContent = "Clear progress";
  });
  window.addEventListener("resize", () => page.reachable(element("desk")));

  for (const id of ["skills", "desk", "keeping"]) {
    element(id).hidden = false;
  }
  const variant = state.current && skills[state.current.skill] && skills[state.current.skill].variants[state.current.variant];
  if (variant) {
    show(false);
    keep();
  } else {
    state.queue = state.queue.length > 0 ? state.queue : fresh().queue;
    give(state.queue[0], false);
  }
  performance.mark("ready");
})();
