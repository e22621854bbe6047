// Zoom and move one photograph by wheel, pinch, drag and keys.
import { Zoom } from "./zoom.js";

const large = document.getElementById("large");
const tools = document.getElementById("tools");
const zoom = new Zoom(large.querySelector(".window"), large);
const deeds = {
  in: () => zoom.by(1.4),
  out: () => zoom.by(1 / 1.4),
  all: () => zoom.all(),
  print: () => print(),
};
tools.hidden = false;
tools.addEventListener("click", (event) => {
  const deed = event.target.closest("button")?.dataset.do;
  if (deed) deeds[deed]();
});
