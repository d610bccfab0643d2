/**
 * What formulas and values are taken from. A comment that says where something comes from ends with
 *
 *   @source KEY place (what of it); KEY place; …
 *
 * KEY one of this list, or `derived`: worked out here, or `practice`: common practice, for which no book is cited. The
 * place (clause, table, page) and the words in brackets may be left out. A list, so over 300 lines.
 */
export interface Reference {
  author: string;
  title: string;
  /** edition, journal with volume and page, or where it was read; empty: none in particular */
  where: string;
  year: number | null;
  /**
   * read: the original, a reprint or a transcription was at hand when it was written down here; memory: none was, or
   * nobody noted it. What was read of a work known otherwise from memory stands under a key of its own.
   */
  seen: 'memory' | 'read';
}

const of = (author: string, title: string, where: string, year: number | null, seen: Reference['seen']): Reference => ({
  author,
  title,
  where,
  year,
  seen,
});

export const REFERENCES: Readonly<Record<string, Reference>> = {
  // Standards and guides
  'API-MPMS11.1': of('API', 'Manual of Petroleum Measurement Standards, chapter 11.1; ASTM D1250', '', null, 'memory'),
  'ASME-B5.10': of('ASME', 'B5.10: Machine tapers', '', null, 'memory'),
  'ASME-Y14.5': of('ASME', 'Y14.5: Dimensioning and tolerancing', '', null, 'memory'),
  'ASTM-D341': of('ASTM', 'D341: Viscosity-temperature charts for liquid petroleum products', '', null, 'memory'),
  'ASTM-D2270': of('ASTM', 'D2270: Calculating viscosity index from kinematic viscosity', '', null, 'memory'),
  'ASTM-D2270-examples': of('ASTM', 'D2270: its worked examples', 'dgaequipment.com', null, 'read'),
  BS4311: of('BSI', 'BS 4311: Gauge blocks and accessories', '', null, 'memory'),
  DIN228: of('DIN', 'DIN 228: Morse tapers and metric tapers', '', null, 'memory'),
  'GGG-G-15': of(
    'United States, General Services Administration',
    'Federal Specification GGG-G-15: Gage blocks',
    '',
    null,
    'memory',
  ),
  ISO1: of('ISO', 'ISO 1: Standard reference temperature', '', null, 'memory'),
  'ISO31-1': of('ISO', 'ISO 31-1: Quantities and units, space and time', '', null, 'memory'),
  ISO296: of('ISO', 'ISO 296: Self-holding tapers for tool shanks', '', null, 'memory'),
  ISO1119: of('ISO', 'ISO 1119: Series of conical tapers and taper angles', '', 2011, 'memory'),
  ISO3040: of('ISO', 'ISO 3040: Dimensioning and tolerancing, cones', '', null, 'memory'),
  ISO3290: of('ISO', 'ISO 3290: Rolling bearings, balls', '', null, 'memory'),
  ISO3448: of(
    'ISO',
    'ISO 3448: Industrial liquid lubricants, viscosity classification',
    'scribd.com/doc/289424684',
    null,
    'read',
  ),
  ISO3650: of('ISO', 'ISO 3650: Gauge blocks', '', null, 'memory'),
  'ISO7902-1': of('ISO', 'ISO 7902-1: Hydrodynamic plain journal bearings, calculation', '', null, 'memory'),
  'ISO7902-3': of(
    'ISO',
    'ISO 7902-3: Hydrodynamic plain journal bearings, permissible operational parameters',
    '',
    1998,
    'memory',
  ),
  'ISO12780-1': of('ISO', 'ISO 12780-1: Straightness, vocabulary and parameters', '', null, 'memory'),
  'ISO32000-1': of('ISO', 'ISO 32000-1: Portable document format', '', 2008, 'memory'),
  JCGM100: of('JCGM', '100: Guide to the expression of uncertainty in measurement', '', 2008, 'memory'),
  JCGM101: of('JCGM', '101: Propagation of distributions using a Monte Carlo method', '', 2008, 'memory'),
  JCGM102: of('JCGM', '102: Extension to any number of output quantities', '', 2011, 'memory'),
  'JIS-B7533': of('JSA', 'JIS B 7533: Dial test indicators, lever type', 'mitutoyo.co.jp', null, 'read'),
  'NIST-SP811': of('NIST', 'Special Publication 811: Guide for the use of the SI', '', null, 'memory'),
  YardAndPound: of('United States and the Commonwealth', 'International yard and pound agreement', '', 1959, 'memory'),
  // Handbooks and textbooks
  BoydVandenberghe: of('S. Boyd, L. Vandenberghe', 'Convex Optimization', '', 2004, 'memory'),
  Callister: of('W. D. Callister', 'Materials Science and Engineering', '', null, 'memory'),
  Childs: of('D. Childs', 'Turbomachinery Rotordynamics', '', null, 'memory'),
  Chvatal: of('V. Chvátal', 'Linear Programming', '', 1983, 'memory'),
  CookWeisberg: of('R. D. Cook, S. Weisberg', 'Residuals and Influence in Regression', '', 1982, 'memory'),
  DavisonHinkley: of('A. C. Davison, D. V. Hinkley', 'Bootstrap Methods and their Application', '', 1997, 'memory'),
  Faires: of(
    'V. M. Faires',
    'Design of Machine Elements, problems and solutions',
    'ar.scribd.com/document/118982587',
    null,
    'read',
  ),
  GolubVanLoan: of('G. H. Golub, C. F. Van Loan', 'Matrix Computations', '', null, 'memory'),
  Handbooks: of('various', 'Handbooks and textbooks of the trade, values that many of them give', '', null, 'memory'),
  Kraemer: of('E. Krämer', 'Dynamics of Rotors and Foundations', '', null, 'memory'),
  LawsonHanson: of('C. L. Lawson, R. J. Hanson', 'Solving Least Squares Problems', '', 1974, 'memory'),
  Lobben: of('P. Lobben', "Machinists' and Draftsmen's Handbook", 'runeberg.org/lobben/0497.html', null, 'read'),
  Luenberger: of('D. Luenberger', 'Linear and Nonlinear Programming', '', null, 'memory'),
  MachinerysHandbook: of('E. Oberg and others', "Machinery's Handbook", '', null, 'memory'),
  MachinerysHandbook31: of('E. Oberg and others', "Machinery's Handbook", '31st edition', 2020, 'read'),
  MacKay: of('D. J. C. MacKay', 'Information Theory, Inference, and Learning Algorithms', '', 2003, 'memory'),
  'NIST-SEMATECH': of('NIST, SEMATECH', 'e-Handbook of Statistical Methods', '', null, 'memory'),
  PinkusSternlicht: of('O. Pinkus, B. Sternlicht', 'Theory of Hydrodynamic Lubrication', '', 1961, 'memory'),
  Rose: of('J. Rose', 'Modern Machine-Shop Practice, volume I', 'a reprint', null, 'read'),
  Someya: of(
    'T. Someya',
    'Journal-Bearing Databook',
    'Springer; GitHub VictorLier/Tribology, W8/Someya.py',
    1989,
    'read',
  ),
  TribologyHandbook: of('M. J. Neale', 'The Tribology Handbook', '', null, 'read'),
  // Papers
  Archard1953: of('J. F. Archard', 'Contact and rubbing of flat surfaces', 'J. Appl. Phys. 24, 981', 1953, 'memory'),
  Baarda1968: of(
    'W. Baarda',
    'A testing procedure for use in geodetic networks',
    'Netherlands Geodetic Commission',
    1968,
    'memory',
  ),
  Beale1955: of(
    'E. M. L. Beale',
    'Cycling in the dual simplex algorithm',
    'Naval Research Logistics Quarterly 2',
    1955,
    'memory',
  ),
  Birge1932: of(
    'R. T. Birge',
    'The calculation of errors by the method of least squares',
    'Phys. Rev. 40, 207',
    1932,
    'memory',
  ),
  Bland1977: of(
    'R. G. Bland',
    'New finite pivoting rules for the simplex method',
    'Mathematics of Operations Research 2, 103',
    1977,
    'memory',
  ),
  Dendy1989: of('J. E. Dendy and others', 'Semicoarsening multigrid for systems', '', 1989, 'memory'),
  DuBoisOcvirk1953: of(
    'G. B. DuBois, F. W. Ocvirk',
    'Analytical derivation of the short-bearing approximation',
    'NACA Report 1157',
    1953,
    'memory',
  ),
  GoldfarbIdnani1983: of(
    'D. Goldfarb, A. Idnani',
    'A numerically stable dual method for solving strictly convex quadratic programs',
    'Mathematical Programming 27, 1-33',
    1983,
    'memory',
  ),
  Hintermueller2002: of(
    'M. Hintermüller, K. Ito, K. Kunisch',
    'The primal-dual active set strategy as a semismooth Newton method',
    'SIAM J. Optim. 13, 865',
    2002,
    'memory',
  ),
  Holmes1960: of('R. Holmes', 'The vibration of a rigid shaft on short sleeve bearings', '', 1960, 'memory'),
  Kalman1960: of('R. E. Kalman', 'A new approach to linear filtering and prediction problems', '', 1960, 'memory'),
  KelleyKeyes1998: of(
    'C. T. Kelley, D. E. Keyes',
    'Convergence analysis of pseudo-transient continuation',
    'SIAM J. Numer. Anal. 35, 508',
    1998,
    'memory',
  ),
  Kornhuber1994: of(
    'R. Kornhuber',
    'Monotone multigrid methods for elliptic variational inequalities',
    'Numer. Math. 69, 167',
    1994,
    'memory',
  ),
  Lund1987: of(
    'J. W. Lund',
    'Review of the concept of dynamic coefficients for fluid film journal bearings',
    'J. Tribology 109, 37',
    1987,
    'memory',
  ),
  LundThomsen1978: of(
    'J. W. Lund, K. K. Thomsen',
    'A calculation method and data for the dynamic coefficients of oil-lubricated journal bearings',
    'ASME',
    1978,
    'memory',
  ),
  Mulder1989: of(
    'W. Mulder',
    'A new multigrid approach to convection problems',
    'J. Comput. Phys. 83, 303',
    1989,
    'memory',
  ),
  Ocvirk1952: of(
    'F. W. Ocvirk',
    'Short-bearing approximation for full journal bearings',
    'NACA TN 2808',
    1952,
    'memory',
  ),
  RaimondiBoyd1958: of(
    'A. A. Raimondi, J. Boyd',
    'A solution for the finite journal bearing',
    'ASLE Trans. 1, 194',
    1958,
    'memory',
  ),
  Rayleigh1918: of('Lord Rayleigh', 'Notes on the theory of lubrication', '', 1918, 'memory'),
  Reynolds1886: of('O. Reynolds', 'On the theory of lubrication', 'Phil. Trans. R. Soc. 177, 157', 1886, 'memory'),
  Rockafellar1976: of(
    'R. T. Rockafellar',
    'Monotone operators and the proximal point algorithm',
    'SIAM J. Control Optim. 14, 877-898',
    1976,
    'memory',
  ),
  ShermanMorrison1950: of(
    'J. Sherman, W. J. Morrison',
    'Adjustment of an inverse matrix corresponding to a change in one element',
    '',
    1950,
    'memory',
  ),
  Sommerfeld1904: of('A. Sommerfeld', 'Zur hydrodynamischen Theorie der Schmiermittelreibung', '', 1904, 'memory'),
  Stefan1874: of('J. Stefan', 'Versuche über die scheinbare Adhäsion', '', 1874, 'memory'),
  Stieber1933: of('W. Stieber', 'Das Schwimmlager', '', 1933, 'memory'),
  Swift1931: of('H. W. Swift', 'The stability of lubricating films in journal bearings', '', 1931, 'memory'),
  Tallian1967: of(
    'T. E. Tallian',
    'On competing failure modes in rolling contact',
    'ASLE Trans. 10, 418',
    1967,
    'memory',
  ),
  VenzonMoolgavkar1988: of(
    'D. J. Venzon, S. H. Moolgavkar',
    'A method for computing profile-likelihood-based confidence intervals',
    'Appl. Statist. 37, 87',
    1988,
    'memory',
  ),
  Verwer1999: of(
    'J. G. Verwer and others',
    'A second-order Rosenbrock method applied to photochemical dispersion problems',
    'SIAM J. Sci. Comput. 20, 1456',
    1999,
    'memory',
  ),
  Wilks1938: of(
    'S. S. Wilks',
    'The large-sample distribution of the likelihood ratio for testing composite hypotheses',
    'Annals of Mathematical Statistics 9, 60',
    1938,
    'memory',
  ),
  Wilson1927: of(
    'E. B. Wilson',
    'Probable inference, the law of succession, and statistical inference',
    'J. Amer. Statist. Assoc. 22, 209',
    1927,
    'memory',
  ),
  // Pages and problems
  'D341-sheet': of('not named', 'A worked sheet of ASTM D341', 'ar.scribd.com/document/361017004', null, 'read'),
  EngTips: of('not named', 'How steep a taper holds by itself', 'eng-tips.com/viewthread.cfm?qid=108966', null, 'read'),
  GATE2015: of('GATE', 'Paper PI, a taper bore with two balls', 'questions-next.examside.com', 2015, 'read'),
  HobbyMachinist: of(
    'not named',
    'Taper sizes by measurement',
    'hobby-machinist.com/threads/taper-sizes-by-measurement.3102',
    null,
    'read',
  ),
  LittleMachineShop: of(
    'not named',
    'Dimensions of standard tapers',
    'littlemachineshop.com/pages/dimensions-of-standard-tapers',
    null,
    'read',
  ),
  LundThomsenTable: of(
    'not named',
    'Table 1a of a coursework file, by its columns and rows that of Lund and Thomsen',
    'GitHub VictorLier/Tribology, W8/Bearing_Stability_Tribology.m',
    null,
    'read',
  ),
  ME308: of('METU', 'ME308, tutorial 1', '', 2005, 'read'),
  'NPL-blocks': of('NPL', 'How do I select gauge blocks', '', null, 'read'),
  'S2.9': of('not named', 'Sample problem S2.9 of a textbook of fluid mechanics', 'holooly.com', null, 'read'),
  ShopDawg: of('not named', 'Sine bar', 'shopdawg.com/sinebar.htm', null, 'read'),
  StarrettWebber: of('Starrett-Webber', 'Gauge blocks, GB49', 'starrett-webber.com/GB49.html', null, 'read'),
};
