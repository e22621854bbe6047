// A picture in a window: how much it is enlarged and where it lies. It never leaves the window.
const MOST = 16;
const STEP = 48;

export class Zoom {
  #window;
  #picture;
  #scale = 1;
  #x = 0;
  #y = 0;
  #fingers = new Map();

  constructor(window, keys) {
    this.#window = window;
    this.#picture = window.querySelector("img");
    window.addEventListener("wheel", (event) => this.#wheel(event), { passive: false });
    window.addEventListener("pointerdown", (event) => this.#down(event));
    window.addEventListener("pointermove", (event) => this.#move(event));
    for (const name of ["pointerup", "pointercancel"]) {
      window.addEventListener(name, (event) => this.#fingers.delete(event.pointerId));
    }
    window.addEventListener("dblclick", (event) => this.by(this.#scale > 1 ? 1 / MOST : 2, event));
    keys.addEventListener("keydown", (event) => this.#key(event));
    this.#picture.draggable = false;
  }

  by(factor, at) {
    const box = this.#window.getBoundingClientRect();
    const x = at ? at.clientX - box.left - box.width / 2 : 0;
    const y = at ? at.clientY - box.top - box.height / 2 : 0;
    const scale = Math.min(MOST, Math.max(1, this.#scale * factor));
    const real = scale / this.#scale;
    this.#x = x - (x - this.#x) * real;
    this.#y = y - (y - this.#y) * real;
    this.#scale = scale;
    this.#show();
  }

  all() {
    this.#scale = 1;
    this.#show();
  }

  pan(x, y) {
    this.#x += x;
    this.#y += y;
    this.#show();
  }

  #show() {
    const farX = ((this.#scale - 1) * this.#window.clientWidth) / 2;
    const farY = ((this.#scale - 1) * this.#window.clientHeight) / 2;
    this.#x = Math.min(farX, Math.max(-farX, this.#x));
    this.#y = Math.min(farY, Math.max(-farY, this.#y));
    this.#picture.style.transform = `translate(${this.#x}px, ${this.#y}px) scale(${this.#scale})`;
    this.#window.classList.toggle("near", this.#scale > 1);
  }

  // The wheel alone moves the page. Two fingers on a touchpad come as a wheel with Control.
  #wheel(event) {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    this.by(event.deltaY < 0 ? 1.2 : 1 / 1.2, event);
  }

  #down(event) {
    this.#window.setPointerCapture(event.pointerId);
    this.#fingers.set(event.pointerId, event);
  }

  #move(event) {
    const before = this.#fingers.get(event.pointerId);
    if (!before) return;
    const others = [...this.#fingers.values()].filter((one) => one.pointerId !== event.pointerId);
    this.#fingers.set(event.pointerId, event);
    if (others.length === 0) {
      this.pan(event.clientX - before.clientX, event.clientY - before.clientY);
    } else {
      const far = (one) => Math.hypot(one.clientX - others[0].clientX, one.clientY - others[0].clientY);
      this.by(far(event) / Math.max(1, far(before)), others[0]);
    }
  }

  #key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const deeds = {
      "+": () => this.by(1.4),
      "=": () => this.by(1.4),
      "-": () => this.by(1 / 1.4),
      0: () => this.all(),
      ArrowLeft: () => this.pan(STEP, 0),
      ArrowRight: () => this.pan(-STEP, 0),
      ArrowUp: () => this.pan(0, STEP),
      ArrowDown: () => this.pan(0, -STEP),
    };
    const moves = event.key.startsWith("Arrow");
    if (!deeds[event.key] || (moves && this.#scale === 1)) return;
    event.preventDefault();
    deeds[event.key]();
  }
}
