(() => {
  const {element} = page;
  const {sheet, units, bare} = page.data();
  const store = page.store("ampersheet-homework-" + sheet);
  const places = page.places(element("answers"));
  const fileName = "answers-" + sheet + ".csv";

  /* Which of two saved files is the newer must stand in them: a browser names the second as it likes. Counted is by this browser. */
  const saves = page.store("ampersheet-homework-saves-" + sheet);
  const newBrowser = () => Array.from(crypto.getRandomValues(new Uint8Array(6)), byte => "23456789ABCDEFGH"[byte % 16]).join("");
  let counted = saves.read() || {browser: newBrowser(), save: 0};
  let changed = counted.save === 0;

  /* Another tab of this browser may have saved since. */
  const nextSave = () => {
    const kept = saves.read() || counted;
    return {browser: kept.browser, save: changed || kept.save !== counted.save ? kept.save + 1 : kept.save};
  };

  const countSave = () => {
    counted = nextSave();
    saves.write(counted);
    changed = false;
  };

  /* How an answer is understood; never whether it is right. */
  const readBack = place => {
    const typed = place.typed().trim();
    if (typed === "") {
      return ["none", ""];
    }
    if (place.isChoice) {
      return ["read", "You chose: " + typed + "."];
    }
    const [kind, text, inUnit] = readAnswer(typed, units[place.question]);
    switch (kind) {
      case "value":
        return ["read", "You entered " + text + "."];
      case "number":
        return bare.includes(place.question)
            ? ["read", "You entered " + inUnit + "."]
            : ["form", "You entered " + text + " without a unit. Write the unit behind it."];
      case "ambiguous":
        return ["form", "This can be read as " + text + ". Type it with a point as the decimal marker and nothing between the "
            + "thousands, and write the unit."];
      default:
        return ["form", text];
    }
  };

  const answers = () => Object.fromEntries(
      places.map(place => [place.question, place.typed().trim()]).filter(([, typed]) => typed !== ""));

  const cell = text => /[",\r\n]/.test(text) ? "\"" + text.replace(/"/g, "\"\"") + "\"" : text;

  /* The seat of this page beside the sheet ID, so that an ID from another sheet is seen. */
  const csv = () => {
    const {browser, save} = nextSave();
    const behind = [String(Number(sheet.split("-")[1])), String(save), browser];
    return ["sheet,question,answer,seat,save,browser"].concat(Object.entries(answers())
        .map(([question, typed]) => [sheet, question, typed, ...behind].map(cell).join(","))).join("\r\n") + "\r\n";
  };

  const update = () => {
    const count = Object.keys(answers()).length;
    element("tally").textContent = count + " of " + places.length + " places filled in.";
    element("save").disabled = count === 0;
    element("file-text").value = csv();
    store.write(answers());
    element("kept").textContent = store.works
        ? "What you type is kept in this browser, on this device, until you clear it."
        : "This browser keeps nothing for this page: save the answer file before you close it.";
  };

  const show = place => place.say(...readBack(place));

  const kept = store.read() || {};
  for (const place of places) {
    place.fill(kept[place.question] || "");
    show(place);
    place.element.addEventListener("input", () => {
      changed = true;
      show(place);
      update();
    });
    place.element.addEventListener("change", () => {
      const [, text] = readBack(place);
      element("read-back").textContent = text === "" ? "" : place.question + ": " + text;
    });
  }

  element("answers").addEventListener("submit", event => event.preventDefault());
  element("save").addEventListener("click", () => {
    page.saveFile(fileName, "text/csv;charset=utf-8", csv());
    countSave();
    element("kept-said").textContent = "Saved as " + fileName + ". Hand in that file; save again if you change an answer.";
  });

  element("file-text").addEventListener("copy", countSave);

  let clearing = false;
  element("clear").addEventListener("click", () => {
    clearing = !clearing;
    element("clear").textContent = clearing ? "Really clear all my answers?" : "Clear my answers";
    if (clearing) {
      element("kept-said").textContent = "Press again to clear all answers on this page.";
      return;
    }
    places.forEach(place => {
      place.fill("");
      show(place);
    });
    changed = true;
    update();
    store.clear();
    element("kept-said").textContent = "All answers on this page are cleared.";
  });
  element("clear").addEventListener("blur", () => {
    clearing = false;
    element("clear").textContent = "Clear my answers";
  });

  element("keeping").hidden = false;
  update();
  page.reachable(document.body);
  window.addEventListener("resize", () => page.reachable(document.body));
  performance.mark("ready");
})();
