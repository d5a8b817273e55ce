// Pointer, wheel and touch on the picture: hovering, clicking, dragging, zooming.

const clickSlop = 4; // pixels that a click may slip

export class Pointer {
  // actions are hover, click, drag and zoom.
  constructor(actions) {
    this.actions = actions;
    this.position = null; // in pixels of the pane; null where the pointer is elsewhere
    this.pressed = new Map(); // places of the pointers that are down, by their ids
    this.dragging = false;
  }

  listen(box) {
    const on = (name, f, options) => box.addEventListener(name, (e) => f.call(this, e, positionIn(box, e)), options);
    on('pointerdown', this.press);
    on('pointermove', this.move);
    on('pointerup', this.release);
    on('pointercancel', this.cancel);
    on('pointerleave', this.leave);
    on('wheel', this.wheel, { passive: false });
  }

  press(e, p) {
    if (e.button !== 0) return;
    e.currentTarget.setPointerCapture(e.pointerId);
    if (this.pressed.size === 0) this.dragging = false;
    this.pressed.set(e.pointerId, p);
    this.start = p;
  }

  move(e, p) {
    this.position = p;
    const before = this.pressed.get(e.pointerId);
    if (!before) {
      if (e.pointerType !== 'touch') this.hover(p);
      return;
    }
    if (!this.dragging && Math.hypot(p[0] - this.start[0], p[1] - this.start[1]) < clickSlop) return;
    this.dragging = true;
    if (this.pressed.size === 1) this.actions.drag(p[0] - before[0], p[1] - before[1]);
    else this.pinch(e.pointerId, before, p);
    this.pressed.set(e.pointerId, p);
  }

  // pinch moves and zooms so that both fingers keep their places on the quilt.
  pinch(id, before, now) {
    const other = [...this.pressed].find(([key]) => key !== id)[1];
    const gap = (p) => Math.max(1, Math.hypot(p[0] - other[0], p[1] - other[1]));
    this.actions.drag((now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
    this.actions.zoom(gap(now) / gap(before), [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]);
  }

  release(e, p) {
    const wasPressed = this.pressed.delete(e.pointerId);
    if (wasPressed && !this.dragging && this.pressed.size === 0) this.actions.click(p);
  }

  cancel(e) { this.pressed.delete(e.pointerId); }

  leave(e) {
    if (this.pressed.size > 0 || e.pointerType === 'touch') return;
    this.position = null;
    this.hover(null);
  }

  // hover looks once a frame, however often the pointer moves.
  hover(p) {
    this.hovered = p;
    this.frame ||= requestAnimationFrame(() => {
      this.frame = 0;
      this.actions.hover(this.hovered);
    });
  }

  // wheel zooms at the pointer. A pinch on a trackpad comes as a wheel with ctrl held, in steps of a few pixels; a notch of a
  // mouse's wheel is a hundred or more.
  wheel(e, p) {
    e.preventDefault();
    const pixels = e.deltaMode === 1 ? e.deltaY * 30 : e.deltaMode === 2 ? e.deltaY * 400 : e.deltaY;
    this.position = p;
    this.actions.zoom(Math.exp(-Math.max(-300, Math.min(300, pixels)) * (e.ctrlKey && Math.abs(pixels) < 40 ? 0.01 : 0.0015)), p);
  }
}

function positionIn(box, e) {
  const r = box.getBoundingClientRect();
  return [e.clientX - r.left, e.clientY - r.top];
}
