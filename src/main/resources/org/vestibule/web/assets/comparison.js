// Lays the later photograph over the earlier one, up to a cut that one moves.
const two = document.getElementById("two");
const ways = document.getElementById("ways");
const slide = document.getElementById("slide");
const cut = document.getElementById("cut");

function show() {
  const over = ways.querySelector("input:checked").value === "slider";
  two.classList.toggle("over", over);
  slide.hidden = !over;
  two.style.setProperty("--cut", (over ? cut.value : 100) + "%");
}

// Pictures that lie differently are not laid over each other: then there is nothing to choose.
if (ways) {
  ways.hidden = false;
  ways.addEventListener("input", show);
  cut.addEventListener("input", show);
  show();
}
