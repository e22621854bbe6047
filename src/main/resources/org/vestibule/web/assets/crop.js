// A crop whose edges only ever lie where the server says that the picture can be cut without loss.
const EDGES = ["left", "top", "right", "bottom"];

export class Crop {
  constructor(cuts, frame, canvas, size, changed) {
    this.inputs = Object.fromEntries(EDGES.map((edge) => [edge, cuts.querySelector(`[name=${edge}]`)]));
    this.frame = frame;
    this.canvas = canvas;
    this.size = size;
    this.changed = changed;
    this.places = null;
    this.dragged = "";
    cuts.addEventListener("input", (event) => this.moved(event.target.name));
    cuts.addEventListener("change", () => this.changed());
    canvas.addEventListener("pointerdown", (event) => this.grab(event));
    canvas.addEventListener("pointermove", (event) => this.drag(event));
    canvas.addEventListener("pointerup", () => this.drop());
    canvas.addEventListener("pointercancel", () => this.drop());
  }

  axis(edge) {
    return edge === "left" || edge === "right" ? this.places.across : this.places.down;
  }

  length(edge) {
    return edge === "left" || edge === "right" ? this.places.wide : this.places.high;
  }

  // What the server says; none before the picture can be laid.
  allow(places) {
    this.places = places;
    EDGES.forEach((edge) => {
      this.inputs[edge].disabled = !places;
      if (places) this.inputs[edge].max = this.axis(edge).length - 1;
    });
  }

  // The crop as words say it: four fractions, or nothing for all of it.
  set(words) {
    if (!this.places) return;
    const fractions = words ? words.split(",").map(Number) : [0, 0, 1, 1];
    EDGES.forEach((edge, at) => {
      this.inputs[edge].value = this.nearest(edge, fractions[at] * this.length(edge));
    });
    this.show(Boolean(words));
  }

  nearest(edge, sample) {
    const places = this.axis(edge);
    let best = 0;
    places.forEach((place, at) => {
      if (Math.abs(place - sample) < Math.abs(places[best] - sample)) best = at;
    });
    return best;
  }

  sample(edge) {
    return this.axis(edge)[Number(this.inputs[edge].value)];
  }

  words() {
    if (!this.places) return "";
    const fractions = EDGES.map((edge) => this.sample(edge) / this.length(edge));
    return fractions.join(",") === "0,0,1,1" ? "" : fractions.join(",");
  }

  moved(edge) {
    const pairs = { left: "right", right: "left", top: "bottom", bottom: "top" };
    const first = edge === "left" || edge === "top";
    const mine = this.inputs[edge];
    const other = Number(this.inputs[pairs[edge]].value);
    if (first && Number(mine.value) >= other) mine.value = Math.max(0, other - 1);
    if (!first && Number(mine.value) <= other) mine.value = other + 1;
    this.show(true);
  }

  show(visible) {
    this.frame.hidden = !visible;
    if (!visible) {
      this.size.textContent = "";
      return;
    }
    EDGES.forEach((edge) => {
      const part = this.sample(edge) / this.length(edge);
      const inset = edge === "left" || edge === "top" ? part : 1 - part;
      this.frame.style.setProperty(edge, inset * 100 + "%");
      this.inputs[edge].setAttribute("aria-valuetext", String(this.sample(edge)));
    });
    const wide = this.sample("right") - this.sample("left");
    this.size.textContent = wide + " × " + (this.sample("bottom") - this.sample("top"));
  }

  at(event, edge) {
    const box = this.canvas.getBoundingClientRect();
    return edge === "left" || edge === "right"
      ? (event.clientX - box.left) / box.width
      : (event.clientY - box.top) / box.height;
  }

  grab(event) {
    if (!this.places || this.frame.hidden) return;
    const near = EDGES.map((edge) => [
      Math.abs(this.at(event, edge) - this.sample(edge) / this.length(edge)), edge]).sort((one, two) => one[0] - two[0])[0];
    if (near[0] > 0.08) return;
    event.preventDefault();
    this.dragged = near[1];
    this.canvas.setPointerCapture(event.pointerId);
  }

  drag(event) {
    if (!this.dragged) return;
    this.inputs[this.dragged].value = this.nearest(this.dragged, this.at(event, this.dragged) * this.length(this.dragged));
    this.moved(this.dragged);
  }

  drop() {
    if (this.dragged) this.changed();
    this.dragged = "";
  }
}
