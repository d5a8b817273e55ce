// One drawing of the quilt: the model's paths as SVG, in one of the views. Beneath everything
// lies the ground in one colour; on it, under each seam, a shape in that one of its two
// fabrics which is painted first afterwards; then the fabrics, the last of the layout first.
// So a pixel that a seam crosses mixes the two colours of the seam and never the ground.

const space = 'http://www.w3.org/2000/svg';

function element(name, parent, attributes = {}) {
  const e = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  parent?.append(e);
  return e;
}

// tints are how a view colours a fabric; those of colour vision are the program's own.
const grey = (f) => f.grey, own = (f) => f.colour;
const tints = { colour: own, line: own, value: grey, squint: grey, vanishing: grey };

export class Drawing {
  constructor(model) {
    this.model = model;
    this.view = 'colour';
    this.seams = false;
    this.svg = element('svg', null, { role: 'img' });
    this.camera = element('g', this.svg);
    this.painted = element('g', this.camera);
    this.ground = element('path', this.painted);
    this.beneath = element('g', this.painted, { 'shape-rendering': 'crispEdges' }); // quicker, and covered
    this.cloth = element('g', this.painted);
    this.squint = element('image', this.camera, { preserveAspectRatio: 'none' });
    this.lines = element('g', this.camera, { class: 'lines' });
    this.letters = element('g', this.camera, { class: 'letters' });
    // What comes and goes lies on a sheet of its own, so that the cloth is not painted again.
    this.over = element('svg', null, { class: 'over', 'aria-hidden': 'true' });
    this.overCamera = element('g', this.over);
    this.marks = element('g', this.overCamera, { class: 'marks' });
    const path = (name) => element('path', this.overCamera, { class: name, d: '' });
    this.veil = path('veil');
    [this.litEdge, this.lit] = ['lit-edge', 'lit'].map((name) => element('g', this.overCamera, { class: name }));
    [this.flash, this.halo, this.mark] = ['flash', 'halo', 'mark'].map(path);
    this.anew();
  }

  anew() {
    this.parts = { beneath: [], cloth: [] };
    this.beneath.replaceChildren();
    this.cloth.replaceChildren();
    this.lineParts = { seams: [], strips: [], outlines: [] };
    this.lines.replaceChildren();
    this.letters.replaceChildren();
    this.lineGroups = null;
    this.linesOf = '';
  }

  // update draws what changed; see Model.apply.
  update(change) {
    const { model } = this;
    if (!model.shown) return;
    if (change.anew) this.anew();
    this.groups();
    this.svg.setAttribute('aria-label', `${model.sheet.title || 'Quilt top'}, ${model.sheet.size}, ${model.sheet.blocks}`);
    if (change.anew || change.colours.length) this.fill();
    const regions = change.anew ? all(model.looseRegion() + 1) : change.regions;
    for (const r of regions) this.region(r);
    if (change.anew) set(this.ground, 'd', model.ground());
    if (change.anew) this.linesOf = '';
    this.showLines(regions);
  }

  // groups keeps a group for each fabric: beneath in the layout's order, above against it.
  groups() {
    for (let f = this.parts.cloth.length; f < this.model.fabrics.length; f++) {
      this.parts.beneath[f] = { group: element('g', this.beneath), paths: [] };
      this.parts.cloth[f] = { group: element('g', null), paths: [] };
      this.cloth.prepend(this.parts.cloth[f].group);
    }
  }

  fill() {
    this.groups();
    const tint = tints[this.view] ?? ((f) => f.seen[this.view] ?? f.colour);
    this.model.fabrics.forEach((f, i) => {
      const colour = tint(f);
      set(this.parts.beneath[i].group, 'fill', colour);
      set(this.parts.cloth[i].group, 'fill', colour);
    });
    const most = this.model.fabrics[this.model.mostSeen()];
    set(this.ground, 'fill', this.view === 'line' ? '#ffffff' : tint(most));
  }

  region(r) {
    if (this.view === 'line') {
      (this.stale ??= new Set()).add(r);
      return;
    }
    const { cloth, under } = this.model.paths(r);
    for (let f = 0; f < this.model.fabrics.length; f++) {
      setPath(this.parts.beneath[f], r, under[f]);
      setPath(this.parts.cloth[f], r, cloth[f]);
    }
  }

  show(view, seams) {
    const recoloured = view !== this.view;
    this.view = view;
    this.seams = seams;
    if (!this.model.shown) return;
    for (const g of [this.beneath, this.cloth]) g.style.display = view === 'line' ? 'none' : '';
    this.lines.classList.toggle('black', view === 'line');
    if (view !== 'line') this.letters.replaceChildren();
    if (recoloured) this.fill();
    if (view !== 'line' && this.stale) {
      for (const r of this.stale) this.region(r);
      this.stale = undefined;
    }
    this.showLines([]);
  }

  // showLines draws seams, or in the line view the outlines of patches, where they are wanted.
  showLines(regions) {
    const want = this.view === 'line' ? 'outlines strips' : this.seams ? 'seams strips' : '';
    if (want !== this.linesOf) {
      this.lines.replaceChildren();
      this.lineGroups = {};
      for (const name of want.split(' ').filter(Boolean)) {
        this.lineGroups[name] = { group: element('g', this.lines, { class: name }), paths: [] };
      }
      this.linesOf = want;
      regions = all(this.model.looseRegion() + 1);
    }
    for (const r of regions) {
      for (const [name, part] of Object.entries(this.lineGroups ?? {})) {
        setPath(part, r, name === 'outlines' ? this.model.outlinePath(r) : this.model.seamPaths(r)[name]);
      }
    }
  }

  place(x, y, scale) {
    for (const camera of [this.camera, this.overCamera]) set(camera, 'transform', `translate(${x} ${y}) scale(${scale})`);
    const block = this.model.sheet?.side ?? 0, thick = Math.min(1, Math.max(0.35, block * scale / 40)).toFixed(2); // thinner where blocks are small
    if (this.thick !== thick) this.over.style.setProperty('--thick', this.thick = thick);
  }

  outline(d) {
    set(this.halo, 'd', d);
    set(this.mark, 'd', d);
  }

  // squinted lays the squint picture over the cloth, or takes it away; url is null for none.
  squinted(url) {
    if (!url || this.view !== 'squint') {
      this.squint.removeAttribute('href');
      return;
    }
    set(this.squint, 'width', String(this.model.sheet.width));
    set(this.squint, 'height', String(this.model.sheet.height));
    set(this.squint, 'href', url);
  }

  // marked marks seams: a list of { heavy, paths }, the heavy ones on top.
  marked(list) {
    this.marks.replaceChildren();
    for (const { heavy, paths } of list.toSorted((a, b) => a.heavy - b.heavy)) {
      for (const name of ['seam-edge', 'seam-mark']) fillWith(element('g', this.marks, { class: `${name} ${heavy ? 'heavy' : 'thin'}` }), paths);
    }
  }

  // light dims all but some faces, '' for none, and draws some seams boldly.
  light(faces, seams) {
    this.over.classList.toggle('lighting', faces !== '' || seams.length > 0);
    set(this.veil, 'd', faces ? this.model.ground() + faces : '');
    fillWith(this.litEdge, seams);
    fillWith(this.lit, seams);
  }

  // alone fades every fabric but one; -1 shows all.
  alone(fabric) {
    this.parts.cloth.forEach((p, f) => p.group.classList.toggle('faded', fabric >= 0 && f !== fabric));
    this.beneath.classList.toggle('faded', fabric >= 0);
    this.squint.style.display = fabric >= 0 ? 'none' : '';
  }

  // letterText writes each letter at its places: one text for all of one size.
  letterText(bySize) {
    this.letters.replaceChildren();
    for (const [size, { letters, x, y }] of bySize) {
      const t = element('text', this.letters, { 'font-size': size, x: x.join(' '), y: y.join(' ') });
      t.textContent = letters.join('');
    }
  }

  // pulse shows once what has changed.
  pulse(d, fabrics) {
    set(this.flash, 'd', d);
    const moving = [this.flash, ...fabrics.map((f) => this.parts.cloth[f]?.group).filter(Boolean)];
    for (const e of moving) {
      e.classList.remove('pulse');
      e.getBoundingClientRect(); // so that the same class begins anew
      e.classList.add('pulse');
    }
  }

  // whole lays the drawing out for paper: all of it, whatever the window shows.
  whole(on) {
    const { width, height } = this.model.sheet ?? { width: 1, height: 1 };
    for (const sheet of [this.svg, this.over]) {
      if (on) sheet.setAttribute('viewBox', `0 0 ${width} ${height}`);
      else sheet.removeAttribute('viewBox');
    }
    if (on) this.place(0, 0, 1);
  }
}

function all(n) { return Array.from({ length: n }, (_, i) => i); }

function fillWith(group, paths) {
  group.replaceChildren();
  for (const d of paths) element('path', group, { d });
}

function set(e, key, value) {
  if (e.getAttribute(key) !== value) e.setAttribute(key, value);
}

// setPath gives a part its path for a region, and takes it away where there is none.
function setPath(part, region, d) {
  const there = part.paths[region];
  if (!d) {
    there?.e.remove();
    part.paths[region] = undefined;
  } else if (!there) {
    part.paths[region] = { d, e: element('path', part.group, { d }) };
  } else if (there.d !== d) {
    there.e.setAttribute('d', there.d = d);
  }
}
