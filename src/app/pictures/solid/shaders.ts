/**
 * How the metal, the oil and the cuts look: light made here, no picture from elsewhere. One pass, no texture, no
 * shadow map, so that a machine without a graphics card draws it too; what a shadow or a reflection would tell comes
 * from the shape itself.
 *
 *   metal   a turned surface has grooves round its axis and smears a reflection across them: every light is a lobe,
 *           narrow along the groove t, wide across it b; exp(-(h·t/α)² - (h·b/β)²), h half way to the eye
 *   shade   darker where the wall of a bush is near and shuts out the light
 *   lines   at borders, as wide as on paper: from the distance to them (revolve.ts), and how fast that changes on the
 *           screen
 *   marks   scribed on the journal, so that a turn of it is seen
 */

export const VERTEX = /* glsl */ `
attribute vec4 edge;
#ifdef TINTED
attribute vec3 color;
varying vec3 vTint;
#endif
varying vec3 vAt;
varying vec3 vNormalOf;
varying vec4 vEdge;
void main() {
  vAt = position;
  vNormalOf = normal;
  vEdge = edge;
  #ifdef TINTED
  vTint = color;
  #endif
  gl_Position = projectionMatrix * viewMatrix * vec4(position, 1.0);
}
`;

const COMMON = /* glsl */ `
#define BUSHES 6
uniform float clip;
uniform float open;
uniform vec2 faces[BUSHES];
uniform float reach;
uniform vec3 ink;
uniform float stroke;
uniform float dark;
varying vec3 vAt;
varying vec3 vNormalOf;
varying vec4 vEdge;

// How much of a line drawn at a border lies on this place.
float ruled(vec4 e, float wide) {
  vec4 d = e / max(fwidth(e), vec4(1e-7));
  float n = min(min(d.x, d.y), min(d.z, d.w));
  return 1.0 - smoothstep(wide - 0.5, wide + 0.5, n);
}

// Hatching: lines at even steps of h, fading to their tone where they are too close to tell.
float hatched(float h, float step, float wide) {
  float w = fwidth(h) / step;
  float d = abs(fract(h / step) - 0.5);
  float line = 1.0 - smoothstep(0.5 * wide * w, (0.5 * wide + 1.0) * w, 0.5 - d);
  return mix(line, wide * w, smoothstep(0.25, 0.5, w));
}

// 1 in the open, less where a bush is near.
float daylight(float angle, float r) {
  float wall = smoothstep(-1.0, 0.35, (abs(angle) - open) * r / (1.3 * reach));
  float within = 0.0;
  for (int i = 0; i < BUSHES; i++) {
    float beyond = max(faces[i].x - vAt.x, vAt.x - faces[i].y);
    within = max(within, 1.0 - smoothstep(0.0, reach, beyond));
  }
  return 1.0 - 0.62 * wall * within;
}
`;

/** Light for metal, in the camera's frame but for up. */
const LIGHT = /* glsl */ `
vec3 studio(vec3 d, vec3 up) {
  float y = dot(d, up);
  vec3 above = mix(vec3(0.62, 0.64, 0.68), vec3(1.05, 1.06, 1.1), smoothstep(0.0, 0.9, y));
  vec3 below = mix(vec3(0.3, 0.27, 0.24), vec3(0.5, 0.44, 0.37), smoothstep(-0.1, -0.9, y));
  return mix(below, above, smoothstep(-0.22, 0.2, y));
}
float lobe(vec3 light, vec3 eye, vec3 n, vec3 t, vec3 b, float along, float across) {
  vec3 h = normalize(light + eye);
  float ht = dot(h, t) / along;
  float hb = dot(h, b) / across;
  return exp(-(ht * ht + hb * hb)) * smoothstep(0.0, 0.35, dot(n, light));
}
vec3 lit(vec3 metal, vec3 n, vec3 t, vec3 eye, vec3 up, float rough) {
  vec3 b = cross(n, t);
  vec3 sheen = vec3(0.0);
  for (int k = -1; k <= 1; k++) {
    float a = 0.3 * float(k);
    vec3 m = n * cos(a) + b * sin(a);
    sheen += studio(reflect(-eye, m), up) * (k == 0 ? 0.4 : 0.3);
  }
  float round = 0.5 + 0.5 * dot(n, up);
  vec3 soft = mix(vec3(0.34, 0.31, 0.28), vec3(0.9, 0.92, 0.96), round);
  vec3 key = normalize(vec3(-0.5, 0.72, 0.62));
  vec3 side = normalize(vec3(0.85, 0.15, 0.45));
  float shine = 0.95 * lobe(key, eye, n, t, b, 0.2 + rough, 0.55)
    + 0.35 * lobe(side, eye, n, t, b, 0.14 + rough, 0.5);
  float facing = max(0.0, dot(n, key));
  return metal * (0.3 * soft + 0.56 * sheen + 0.3 * facing) + mix(metal, vec3(1.0), 0.4) * shine * 0.9;
}
`;

/** Journal and bush. MARKED: with what shows that it turns. TINTED: its colour is that of its corners. */
export const METAL = /* glsl */ `
${COMMON}
${LIGHT}
uniform vec3 metal;
#ifdef MARKED
uniform float turn;
uniform vec4 axis;
uniform vec4 ends;
#endif
#ifdef TINTED
varying vec3 vTint;
#endif

float noise(float s) {
  float i = floor(s);
  float f = fract(s);
  float a = fract(sin(i * 12.9898) * 43758.5453);
  float b = fract(sin((i + 1.0) * 12.9898) * 43758.5453);
  return mix(a, b, f * f * (3.0 - 2.0 * f));
}

#ifdef MARKED
// A scribed line from end to end, a scale round the nose, holes and a centre in the end faces.
float marks(float flat_) {
  vec2 at = vAt.yz - axis.xy - axis.zw * vAt.x;
  float r = length(at);
  float turned = atan(at.x, at.y) - turn;
  float px = fwidth(r) + fwidth(vAt.x) + 1e-6;
  float wide = max(0.0055, 0.75 * px);
  float scribed = r * abs(2.0 * asin(sin(0.5 * turned)));
  float third = r * sin(abs(mod(turned + 0.5235988, 1.0471976) - 0.5235988));
  #ifndef SCRIBED
  if (flat_ < 0.5) return 0.0;
  #endif
  if (flat_ < 0.5) {
    float line = 1.0 - smoothstep(wide, wide + px, scribed);
    float ruler = (1.0 - smoothstep(wide, wide + px, third))
      * smoothstep(ends.y - 0.05 - px, ends.y - 0.05, vAt.x);
    return max(line, ruler);
  }
  if (min(abs(vAt.x - ends.x), abs(vAt.x - ends.y)) > 1e-3) return 0.0;
  float size = vAt.x > 0.0 ? ends.w : ends.z;
  float hole = length(vec2(r - 0.62 * size, r * 2.0 * sin(0.5 * (mod(turned + 1.0471976, 2.0943951) - 1.0471976))));
  float dots = 1.0 - smoothstep(0.085 * size - px, 0.085 * size + px, hole);
  float centre = 1.0 - smoothstep(0.12 * size - px, 0.12 * size + px, r);
  return max(dots, centre);
}
#endif

void main() {
  if (vAt.x > clip) discard;
  vec3 n = normalize(vNormalOf);
  float r = length(vAt.yz);
  vec3 round = r > 1e-5 ? vec3(0.0, -vAt.z, vAt.y) / r : vec3(0.0, 1.0, 0.0);
  mat3 seen = mat3(viewMatrix);
  vec3 eye = normalize(-(viewMatrix * vec4(vAt, 1.0)).xyz);
  float slant = length(n.yz);
  float s = vAt.x * slant - r * n.x;
  float w = fwidth(s);
  float grain = (noise(s * 190.0) - 0.5) * (1.0 - smoothstep(0.002, 0.006, w))
    + 0.5 * (noise(s * 83.0) - 0.5) * (1.0 - smoothstep(0.004, 0.012, w));
  #ifdef TINTED
  vec3 base = vTint;
  #else
  vec3 base = metal;
  #endif
  vec3 vn = seen * n;
  vec3 up = seen * vec3(0.0, 1.0, 0.0);
  vec3 colour = lit(base * (1.0 + 0.1 * grain), vn, seen * round, eye, up, 0.05 * grain);
  float angle = atan(vAt.y, vAt.z);
  #ifdef BORE
  // A bore opens to the light through the sector; deep in it there is less.
  float inner = step(0.0, -dot(n.yz, vAt.yz)) * slant;
  colour *= mix(1.0, mix(0.42, 0.85, smoothstep(3.2, open, abs(angle))), inner);
  #else
  colour *= daylight(angle, r);
  #endif
  #ifdef MARKED
  float mark = marks(step(0.9, abs(n.x)));
  colour = mix(colour, ink * 0.6 + 0.05 * base, 0.85 * mark);
  #endif
  // Its outline, where it turns away.
  float rim = 1.0 - abs(dot(vn, eye));
  colour = mix(colour, mix(ink, base, 0.25), 0.75 * smoothstep(0.8, 1.0, rim));
  colour = mix(colour, ink, 0.9 * ruled(vEdge, stroke));
  gl_FragColor = vec4(colour, 1.0);
  #include <colorspace_fragment>
}
`;

/** A cut face: flat and hatched as on a drawing, at 45 degrees one way or the other. */
export const CUT = /* glsl */ `
${COMMON}
uniform vec3 metal;
uniform float hatch;
uniform float lean;
void main() {
  if (vAt.x > clip) discard;
  vec2 flat_ = abs(vNormalOf.x) > 0.9 ? vAt.zy : vec2(vAt.x, length(vAt.yz));
  float line = hatched((flat_.x + lean * flat_.y) * 0.70710678, hatch, stroke * 0.55);
  vec3 eye = normalize(-(viewMatrix * vec4(vAt, 1.0)).xyz);
  float facing = abs(dot(mat3(viewMatrix) * normalize(vNormalOf), eye));
  vec3 colour = metal * mix(0.8, 1.04, smoothstep(0.0, 0.9, facing));
  colour = mix(colour, ink, 0.5 * line);
  colour = mix(colour, ink, 0.95 * ruled(vEdge, stroke * 1.35));
  gl_FragColor = vec4(colour, 1.0);
  #include <colorspace_fragment>
}
`;

/** Oil: the colour is the legend's; a gleam and its outline tell the shell. Classes are ruled as on the drawings. */
export const OIL = /* glsl */ `
${COMMON}
uniform float thick;
uniform vec3 pressed;
uniform vec3 thin;
uniform vec3 wide;
uniform vec3 touching;
uniform vec3 touched;
uniform float hatch;
varying vec3 vTint;
// Whether this place has the colour of a class, whose shades keep within so much of its middle one.
float isOf(vec3 kind) { return 1.0 - smoothstep(0.125, 0.145, distance(vTint, kind)); }
void main() {
  if (vAt.x > clip) discard;
  vec3 n = mat3(viewMatrix) * normalize(vNormalOf);
  vec3 eye = normalize(-(viewMatrix * vec4(vAt, 1.0)).xyz);
  vec3 colour = distance(vTint, touching) < 0.01 ? touched : vTint;
  float alpha = thick;
  float clash = 1.0 - smoothstep(0.02, 0.08, distance(vTint, pressed));
  float r = length(vAt.yz);
  alpha = mix(alpha, 1.0, clash);
  // Too thin ruled round, too thick along, pressed in both ways aslant; a face of the cut by its own plane.
  float turned = r * atan(vAt.y, vAt.z);
  float up = abs(dot(vNormalOf.yz, vAt.yz)) < 0.5 * r ? r : turned;
  float crossed = max(
    hatched((vAt.x + up) * 0.70710678, 0.8 * hatch, 0.6 * stroke),
    hatched((vAt.x - up) * 0.70710678, 0.8 * hatch, 0.6 * stroke)
  );
  float rules = max(
    isOf(thin) * hatched(vAt.x, 0.7 * hatch, 0.6 * stroke),
    isOf(wide) * hatched(up, hatch, 0.6 * stroke)
  );
  colour = mix(colour, ink, max(0.3 * rules, 0.5 * clash * crossed));
  #ifdef SHELL
  float rim = 1.0 - abs(dot(n, eye));
  vec3 h = normalize(normalize(vec3(-0.5, 0.72, 0.62)) + eye);
  float gleam = pow(max(0.0, dot(n, h)), 60.0) * (1.0 - clash);
  colour = mix(colour, vec3(1.0), 0.55 * gleam);
  alpha = mix(alpha, 0.95, smoothstep(0.55, 1.0, rim));
  alpha = max(alpha, 0.8 * gleam);
  #endif
  float line = ruled(vEdge, stroke);
  colour = mix(colour, ink, 0.75 * line);
  alpha = max(alpha, 0.75 * line);
  gl_FragColor = vec4(colour, alpha);
  #include <colorspace_fragment>
}
`;

/** Contact: a bright core and a glow that fades to its border. */
export const TOUCH = /* glsl */ `
${COMMON}
uniform vec3 metal;
uniform float glow;
void main() {
  if (vAt.x > clip) discard;
  vec3 n = mat3(viewMatrix) * normalize(vNormalOf);
  vec3 eye = normalize(-(viewMatrix * vec4(vAt, 1.0)).xyz);
  float facing = abs(dot(n, eye));
  float core = smoothstep(0.2, 1.0, facing);
  gl_FragColor = vec4(mix(metal, mix(metal, vec3(1.0), 0.55), core * (1.0 - glow)), mix(1.0, 0.5 * facing * facing, glow));
  #include <colorspace_fragment>
}
`;

/** What the pair shuts out of the light on the ground: an ellipse that fades. */
export const SHADOW = /* glsl */ `
uniform float dark;
uniform vec2 size;
varying vec3 vAt;
void main() {
  vec2 at = vAt.xz / size;
  float far = length(at);
  gl_FragColor = vec4(vec3(0.0), mix(0.3, 0.55, dark) * pow(1.0 - smoothstep(0.15, 1.0, far), 1.6));
  #include <colorspace_fragment>
}
`;
