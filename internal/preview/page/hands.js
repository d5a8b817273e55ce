// Pointer, wheel and touch on the picture: hovering, clicking, dragging, zooming.

const still = 4; // pixels that a click may slip

export class Hands {
  constructor(does) {
    this.does = does;
    this.at = null; // where the pointer is, in pixels of the pane
    this.down = new Map(); // pointers that are pressed
    this.slipped = false;
  }

  hold(box) {
    const on = (name, f, options) => box.addEventListener(name, (e) => f.call(this, e, place(box, e)), options);
    on('pointerdown', this.press);
    on('pointermove', this.move);
    on('pointerup', this.lift);
    on('pointercancel', this.lose);
    on('pointerleave', this.leave);
    on('wheel', this.wheel, { passive: false });
  }

  press(e, p) {
    if (e.button !== 0) return;
    e.currentTarget.setPointerCapture(e.pointerId);
    if (this.down.size === 0) this.slipped = false;
    this.down.set(e.pointerId, p);
    this.start = p;
  }

  move(e, p) {
    this.at = p;
    const before = this.down.get(e.pointerId);
    if (!before) {
      if (e.pointerType !== 'touch') this.hover(p);
      return;
    }
    if (!this.slipped && Math.hypot(p[0] - this.start[0], p[1] - this.start[1]) < still) return;
    this.slipped = true;
    if (this.down.size === 1) this.does.drag(p[0] - before[0], p[1] - before[1]);
    else this.pinch(e.pointerId, before, p);
    this.down.set(e.pointerId, p);
  }

  // pinch moves and zooms so that both fingers keep their places on the quilt.
  pinch(id, before, now) {
    const other = [...this.down].find(([key]) => key !== id)[1];
    const gap = (p) => Math.max(1, Math.hypot(p[0] - other[0], p[1] - other[1]));
    this.does.drag((now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
    this.does.zoom(gap(now) / gap(before), [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]);
  }

  lift(e, p) {
    const pressed = this.down.delete(e.pointerId);
    if (pressed && !this.slipped && this.down.size === 0) this.does.click(p);
  }

  lose(e) { this.down.delete(e.pointerId); }

  leave(e) {
    if (this.down.size > 0 || e.pointerType === 'touch') return;
    this.at = null;
    this.hover(null);
  }

  // hover looks once a frame, however often the pointer moves.
  hover(p) {
    this.hovered = p;
    this.frame ||= requestAnimationFrame(() => {
      this.frame = 0;
      this.does.hover(this.hovered);
    });
  }

  // wheel zooms at the pointer; a pinch on a trackpad comes as a wheel with ctrl held.
  wheel(e, p) {
    e.preventDefault();
    const pixels = e.deltaMode === 1 ? e.deltaY * 30 : e.deltaMode === 2 ? e.deltaY * 400 : e.deltaY;
    this.at = p;
    this.does.zoom(Math.exp(-Math.max(-300, Math.min(300, pixels)) * (e.ctrlKey ? 0.01 : 0.0015)), p);
  }
}

function place(box, e) {
  const r = box.getBoundingClientRect();
  return [e.clientX - r.left, e.clientY - r.top];
}
