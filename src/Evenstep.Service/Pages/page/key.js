// A place for a key: where the service asks for one, or somebody opens it.
import { el, replace } from "./dom.js";
import { say } from "./texts.js";
import { hasKey, useKey } from "./service.js";
import { button, keepingFocus, showError, textField } from "./controls.js";

/** Says why; of a key that was tried, at its field. */
export function showKey(place, why, retry) {
  keepingFocus(() => replace(place,
    !hasKey() && why && el("p", why),
    keyField(place.querySelector("input")?.value),
    el("div.buttons",
      el("button.main", { id: "c-key.use" }, say("key.use")),
      hasKey() && button(say("key.forget"), forget))));
  place.onsubmit = () => {
    useKey(place.querySelector("input").value);
    retry();
  };
  place.hidden = false;
  if (hasKey() && why) {
    showError("key", [{ lead: why }]);
  }
}

function keyField(value = "") {
  const field = textField("key", { label: say("key.label"), hint: say("key.hint"), value, numeric: false, oninput() {} });
  field.querySelector("input").type = "password";
  return field;
}

function forget() {
  useKey("");
  location.reload();
}
