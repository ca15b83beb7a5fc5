// What the page does more with script: no reload on a deed, dropped photos, a picture or a drawing seen large, progress as
// it comes. Without it everything works by forms and links.
"use strict";
(() => {
  const root = document.documentElement;
  root.classList.add("scripted");
  let busy = false, pressing = false, waiting = [], later = null, clicked = null, looks = 0;

  const form = () => document.querySelector("form.screen");
  const idOf = (node) => node && node.closest && (node.closest("[id]") || {}).id;

  // The screen that came takes the place of the one that is shown. What has the focus keeps it as long as the place is
  // the same; in a new place the focus stands on its heading.
  const take = (text, typing) => {
    const came = new DOMParser().parseFromString(text, "text/html");
    const next = came.querySelector("form.screen");
    if (!next) { location.reload(); return; }
    const same = came.body.dataset.place === document.body.dataset.place;
    if (typing && same) {
      // Somebody is typing: nothing moves under the hands, only the ticket is new.
      form().querySelector("[name=ticket]").value = next.querySelector("[name=ticket]").value;
      for (const link of document.querySelectorAll(".drawing a")) {
        link.setAttribute("href", link.getAttribute("href").replace(/^\/go\/[^/]+/, "/go/" + ticket()));
      }
      return;
    }
    const focus = idOf(document.activeElement);
    const caret = document.activeElement && document.activeElement.selectionStart;
    const open = same ? [...document.querySelectorAll("details[open][id]")].map((one) => one.id) : [];
    const known = new Set([...document.querySelectorAll("[data-notice]")].map((one) => one.dataset.notice));
    document.title = came.title;
    root.lang = came.documentElement.lang;
    root.dir = came.documentElement.dir;
    for (const name of ["place", "name", "way", "working"]) {
      if (came.body.dataset[name] === undefined) delete document.body.dataset[name];
      else document.body.dataset[name] = came.body.dataset[name];
    }
    // A notice that was said already is not said again.
    for (const notice of next.querySelectorAll("[data-notice]")) {
      if (known.has(notice.dataset.notice)) notice.removeAttribute("role");
    }
    // What the script itself said stands until the next deed, however often the screen is drawn meanwhile.
    const told = same ? [...document.querySelectorAll("[data-told]")] : [];
    form().replaceWith(document.adoptNode(next));
    for (const one of told) { one.removeAttribute("role"); document.querySelector(".notices").append(one); }
    for (const id of open) { const one = document.getElementById(id); if (one) one.open = true; }
    if (same) {
      const back = focus && document.getElementById(focus);
      if (back) {
        back.focus({ preventScroll: true });
        if (caret != null && back.setSelectionRange && back.type !== "number") {
          try { back.setSelectionRange(caret, caret); } catch { /* not every input has a caret */ }
        }
      }
    } else {
      document.querySelector("main").classList.add("new");
      scrollTo(0, 0);
      const lead = document.querySelector("h1");
      if (lead) lead.focus({ preventScroll: true });
    }
    ready();
  };
  const ticket = () => form().querySelector("[name=ticket]").value;
  const here = () => document.body.dataset.place;
  const writes = (node) => !!node && !!node.matches && node.matches("input:not([type=radio],[type=checkbox]), textarea");
  const presses = (data) => [...data.keys()].some((key) => key === "press" || key === "back" || key.startsWith("pick "));

  // What comes while a deed is under way waits, and is sent only in the place for which it was meant; elsewhere it is said
  // that nothing came of it. Of presses one waits while something typed or marked is being kept; behind another press it is
  // the second click of one double click. Photos all wait: nobody would drop them twice.
  const send = async (data, typing) => {
    if (busy) {
      if (typing || (pressing && presses(data))) return;
      if (presses(data)) waiting = waiting.filter((one) => !presses(one.data));
      waiting.push({ data, place: here() });
      return;
    }
    busy = true;
    pressing = presses(data);
    if (!typing) for (const one of document.querySelectorAll("[data-told]")) one.remove();
    try {
      const answer = await fetch("/deed", { method: "POST", body: data, headers: { "X-By-Script": "1", ...wide() } });
      take(await answer.text(), typing);
    } catch {
      // The program may have been ended: the browser itself says so.
      location.reload();
    } finally {
      busy = false;
      goOn();
    }
  };
  // What waited goes on in its place. Long work stands over that place until it is over.
  const goOn = () => {
    if (busy || !waiting.length || document.body.dataset.name === "long-work") return;
    const next = waiting.shift();
    if (next.place === here()) { next.data.set("ticket", ticket()); send(next.data); }
    else { waiting = []; sayStale(); }
  };
  const sayStale = () => {
    document.querySelector(".notices").append(document.importNode(document.getElementById("page-stale").content, true));
  };

  // The screen may have changed between the two clicks of a double click: the second was meant for what is gone.
  addEventListener("click", (event) => {
    if (event.detail > 1 && clicked !== here()) { event.preventDefault(); event.stopPropagation(); return; }
    clicked = here();
  }, true);

  addEventListener("submit", (event) => {
    if (event.target !== form()) return;
    event.preventDefault();
    clearTimeout(later);
    const by = event.submitter;
    if (by && by.classList.contains("no")) { by.closest("details").open = false; return; }
    send(new FormData(form(), by));
  });

  // What is typed is kept about each second; a search counts each letter; a mark counts at once.
  const quietly = (typing, wait) => {
    clearTimeout(later);
    later = setTimeout(() => { if (!busy) send(new FormData(form()), typing); else quietly(typing, 100); }, wait);
  };
  addEventListener("input", (event) => {
    const it = event.target;
    if (!it.form || it.form !== form() || it.type === "file") return;
    if (it.type === "radio" || it.type === "checkbox") {
      alone(it);
      quietly(false, 0);
    } else if (it.dataset.search !== undefined) quietly(false, 150);
    else quietly(true, 900);
  });
  // “Not sure” excludes all others.
  const alone = (it) => {
    if (it.type !== "checkbox" || !it.checked) return;
    for (const other of form().elements) {
      if (other !== it && other.name === it.name && other.type === "checkbox") {
        if ((it.dataset.alone !== undefined) !== (other.dataset.alone !== undefined)) other.checked = false;
      }
    }
  };
  addEventListener("change", (event) => {
    const it = event.target;
    if (it.type === "file" && it.form === form() && it.files.length && it.closest(".drop")) send(new FormData(form()));
  });

  // Photos dropped anywhere go to the one place for photos.
  addEventListener("dragover", (event) => {
    const drop = document.querySelector(".drop");
    if (!drop || !event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    drop.classList.add("over");
  });
  addEventListener("dragleave", () => document.querySelector(".drop")?.classList.remove("over"));
  addEventListener("drop", (event) => {
    const drop = document.querySelector(".drop");
    if (!drop) return;
    event.preventDefault();
    drop.classList.remove("over");
    const pictures = [...event.dataTransfer.files].filter((file) => /^image\/(jpeg|png)$/.test(file.type));
    if (!pictures.length) return;
    const data = new FormData(form());
    const name = document.getElementById(drop.dataset.drop).name;
    data.delete(name);
    for (const picture of pictures) data.append(name, picture);
    send(data);
  });

  // A touch on a mark of a drawing, without a reload.
  addEventListener("click", async (event) => {
    const mark = event.target.closest && event.target.closest(".drawing a");
    if (mark) {
      event.preventDefault();
      try { take(await (await fetch(mark.getAttribute("href"), { headers: wide() })).text()); } catch { location.reload(); }
      return;
    }
    const photo = event.target.closest && event.target.closest("a[data-photo]");
    if (photo && !event.ctrlKey && !event.metaKey) { event.preventDefault(); large(photo); }
  });

  // A photo seen large: larger, smaller, turned. The buttons say what they do in signs that need no language beside their
  // titles, which the page brings along.
  const large = (link) => {
    const box = document.createElement("dialog");
    box.className = "large";
    const view = box.appendChild(document.createElement("div"));
    view.className = "view";
    view.tabIndex = 0;
    const picture = view.appendChild(new Image());
    picture.alt = link.textContent.trim();
    picture.src = link.href;
    let size = 1, turned = 0;
    const set = () => {
      picture.style.setProperty("width", picture.naturalWidth * size + "px");
      picture.style.setProperty("rotate", turned + "deg");
    };
    picture.addEventListener("load", () => {
      size = Math.min(1, innerWidth * 0.86 / picture.naturalWidth, innerHeight * 0.7 / picture.naturalHeight);
      set();
    });
    const bar = box.appendChild(document.createElement("div"));
    bar.className = "out";
    const button = (sign, does) => {
      const one = bar.appendChild(document.createElement("button"));
      one.type = "button";
      one.className = "press other";
      one.textContent = sign;
      one.addEventListener("click", () => does(one));
    };
    const say = document.querySelector("#page-words").dataset;
    const drop = document.querySelector(".drop");
    if (drop) button(say.crop, (one) => crop(view, picture, drop, one, say, () => box.close()));
    button(say.larger, () => { size *= 1.5; set(); });
    button(say.smaller, () => { size /= 1.5; set(); });
    button(say.turn, () => { turned = (turned + 90) % 360; set(); });
    button(say.back, () => box.close());
    box.addEventListener("close", () => { box.remove(); link.focus(); });
    document.body.append(box);
    box.showModal();
  };

  // A frame drawn over the picture; what lies in it is sent as a photo of its own. The keys move and size it too.
  const crop = (view, picture, drop, button, say, close) => {
    const frame = view.appendChild(document.createElement("div"));
    frame.className = "frame";
    frame.tabIndex = 0;
    frame.setAttribute("role", "group");
    frame.setAttribute("aria-label", say.frame);
    picture.style.setProperty("rotate", "0deg");
    const at = { x: 0.2, y: 0.3, w: 0.6, h: 0.4 };
    const place = () => {
      for (const side of ["x", "y"]) at[side] = Math.min(Math.max(at[side], 0), 0.95);
      at.w = Math.min(Math.max(at.w, 0.05), 1 - at.x);
      at.h = Math.min(Math.max(at.h, 0.05), 1 - at.y);
      const [wide, high] = [picture.clientWidth, picture.clientHeight];
      frame.style.setProperty("left", picture.offsetLeft + at.x * wide + "px");
      frame.style.setProperty("top", picture.offsetTop + at.y * high + "px");
      frame.style.setProperty("width", at.w * wide + "px");
      frame.style.setProperty("height", at.h * high + "px");
    };
    place();
    frame.focus();
    let from = null;
    const where = (event) => {
      const box = picture.getBoundingClientRect();
      return { x: (event.clientX - box.left) / box.width, y: (event.clientY - box.top) / box.height };
    };
    view.addEventListener("pointerdown", (event) => { event.preventDefault(); from = where(event); });
    view.addEventListener("pointermove", (event) => {
      if (!from || !event.buttons) return;
      const to = where(event);
      Object.assign(at, { x: Math.min(from.x, to.x), y: Math.min(from.y, to.y), w: Math.abs(to.x - from.x), h: Math.abs(to.y - from.y) });
      place();
    });
    view.addEventListener("pointerup", () => { from = null; });
    frame.addEventListener("keydown", (event) => {
      const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
      if (!step) return;
      event.preventDefault();
      const [x, y] = event.shiftKey ? ["w", "h"] : ["x", "y"];
      at[x] += step[0] * 0.02;
      at[y] += step[1] * 0.02;
      place();
    });
    const take = button.cloneNode();
    take.textContent = say.take;
    button.replaceWith(take);
    take.addEventListener("click", () => {
      const canvas = document.createElement("canvas");
      const [wide, high] = [picture.naturalWidth, picture.naturalHeight];
      canvas.width = Math.max(1, Math.round(at.w * wide));
      canvas.height = Math.max(1, Math.round(at.h * high));
      canvas.getContext("2d").drawImage(picture, at.x * wide, at.y * high, canvas.width, canvas.height, 0, 0, canvas.width, canvas.height);
      canvas.toBlob((piece) => {
        const data = new FormData(form());
        const name = document.getElementById(drop.dataset.drop).name;
        data.delete(name);
        data.append(name, piece, "piece.jpg");
        close();
        send(data);
      }, "image/jpeg", 0.92);
    });
  };

  // Keys: digits choose an answer, Escape goes back. Not while somebody writes.
  addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || document.querySelector("dialog[open]")) return;
    // A key that is held is one press: what it goes on with was meant for no screen that came since.
    if (event.repeat) {
      if (event.key === "Enter" && event.target.tagName !== "TEXTAREA") event.preventDefault();
      return;
    }
    if (event.key === "Escape") {
      const back = document.getElementById("back");
      if (back) { event.preventDefault(); back.click(); }
    } else if (!writes(event.target) && /^[1-9]$/.test(event.key)) {
      const answer = document.querySelectorAll(".choice .opt")[Number(event.key) - 1];
      if (answer) { event.preventDefault(); (answer.querySelector("input") || answer).click(); }
    } else if (!writes(event.target) && event.key === "Enter" && (event.target === document.body || event.target.tagName === "H1")) {
      document.querySelector(".dock .press.main")?.click();
    }
  });

  // How far something is that goes on, until the screen is to be drawn anew. However many screens come, one looks.
  const look = async () => {
    looks += 1;
    const mine = looks;
    if (document.body.dataset.working === undefined) return;
    try {
      const far = await (await fetch("/how-far")).text();
      if (mine !== looks) return;
      const bar = document.querySelector("progress");
      if (far === "over" && !busy) {
        const text = await (await fetch("/", { headers: wide() })).text();
        // Something may have been pressed meanwhile.
        if (mine !== looks) return;
        if (!busy) { take(text); goOn(); return; }
      }
      if (bar && Number(far) >= 0) bar.value = Number(far);
    } catch { return; }
    setTimeout(() => { if (mine === looks) look(); }, 250);
  };

  // How wide drawings are shown here: then only the layout that fits is sent. Where none is shown that is not known.
  const wide = () => {
    const pane = document.querySelector("[data-drawing]");
    return pane ? { "X-Shown-Wide": String(pane.clientWidth) } : {};
  };
  // Where another layout fits now and was not sent, the screen is fetched once more, with all of them.
  const fits = (pane) => {
    const step = pane.dataset.steps.split(" ").filter((step) => step === "0" || Number(step) <= pane.clientWidth).pop();
    return pane.clientWidth === 0 || pane.querySelector(`[data-step="${step}"]`) !== null;
  };
  // While something else goes on it waits, or it would be missed: the window does not change a second time.
  let refitting;
  const fit = async () => {
    clearTimeout(refitting);
    if ([...document.querySelectorAll("[data-drawing]")].every(fits)) return;
    const before = ticket();
    if (!busy && !writes(document.activeElement)) {
      try {
        const text = await (await fetch("/")).text();
        if (!busy && ticket() === before) { take(text); goOn(); return; }
      } catch { return; /* the program was ended: the next deed says so */ }
    }
    clearTimeout(refitting);
    refitting = setTimeout(fit, 250);
  };
  const refit = new ResizeObserver(fit);

  // A drawing is dragged and zoomed in its own frame, where it is larger than that.
  const panes = () => {
    refit.disconnect();
    for (const pane of document.querySelectorAll("[data-drawing]")) {
      refit.observe(pane);
      let from = null;
      pane.addEventListener("pointerdown", (event) => {
        if (event.pointerType !== "mouse" || event.button !== 0) return;
        from = { x: event.clientX + pane.scrollLeft, y: event.clientY + pane.scrollTop };
      });
      pane.addEventListener("pointermove", (event) => {
        if (!from || !event.buttons) { from = null; return; }
        pane.scrollTo(from.x - event.clientX, from.y - event.clientY);
      });
      pane.addEventListener("wheel", (event) => {
        if (!event.ctrlKey) return;
        event.preventDefault();
        const drawing = pane.querySelector("svg");
        const now = drawing.getBoundingClientRect().width;
        const natural = Number(drawing.getAttribute("width"));
        const wide = Math.min(Math.max(now * (event.deltaY < 0 ? 1.2 : 1 / 1.2), pane.clientWidth), natural * 4);
        drawing.style.setProperty("max-width", "none");
        drawing.style.setProperty("width", wide + "px");
      }, { passive: false });
    }
  };

  const ready = () => { panes(); look(); };
  ready();
})();
