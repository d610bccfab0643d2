/**
 * Direction numbers of the Sobol' sequence, dimensions 2 to 64 (the first is the radical inverse in base 2): for each
 * its primitive polynomial, the coefficients as the bits of a number, then m_1, m_2, …, as many as its degree. Of the
 * set new-joe-kuo-6, chosen so that projections on two dimensions are even.
 *
 * The numbers: Copyright (c) 2008, Frances Y. Kuo and Stephen Joe. All rights reserved. Redistribution and use in
 * source and binary forms, with or without modification, are permitted provided that the following conditions are met:
 * Redistributions of source code must retain the above copyright notice, this list of conditions and the following
 * disclaimer. Redistributions in binary form must reproduce the above copyright notice, this list of conditions and the
 * following disclaimer in the documentation and/or other materials provided with the distribution. Neither the names of
 * the copyright holders nor the names of the University of New South Wales and the University of Waikato and its
 * contributors may be used to endorse or promote products derived from this software without specific prior written
 * permission. This software is provided by the copyright holders "as is" and any express or implied warranties,
 * including, but not limited to, the implied warranties of merchantability and fitness for a particular purpose are
 * disclaimed. In no event shall the copyright holders be liable for any direct, indirect, incidental, special,
 * exemplary, or consequential damages (including, but not limited to, procurement of substitute goods or services; loss
 * of use, data, or profits; or business interruption) however caused and on any theory of liability, whether in
 * contract, strict liability, or tort (including negligence or otherwise) arising in any way out of the use of this
 * software, even if advised of the possibility of such damage.
 * @source JoeKuo2008 new-joe-kuo-6 (the numbers)
 */
export const DIRECTION_NUMBERS: readonly string[] = [
  '3 1',
  '7 1 3',
  '11 1 3 1',
  '13 1 1 1',
  '19 1 1 3 3',
  '25 1 3 5 13',
  '37 1 1 5 5 17',
  '41 1 1 5 5 5',
  '47 1 1 7 11 19',
  '55 1 1 5 1 1',
  '59 1 1 1 3 11',
  '61 1 3 5 5 31',
  '67 1 3 3 9 7 49',
  '91 1 1 1 15 21 21',
  '97 1 3 1 13 27 49',
  '103 1 1 1 15 7 5',
  '109 1 3 1 15 13 25',
  '115 1 1 5 5 19 61',
  '131 1 3 7 11 23 15 103',
  '137 1 3 7 13 13 15 69',
  '143 1 1 3 13 7 35 63',
  '145 1 3 5 9 1 25 53',
  '157 1 3 1 13 9 35 107',
  '167 1 3 1 5 27 61 31',
  '171 1 1 5 11 19 41 61',
  '185 1 3 5 3 3 13 69',
  '191 1 1 7 13 1 19 1',
  '193 1 3 7 5 13 19 59',
  '203 1 1 3 9 25 29 41',
  '211 1 3 5 13 23 1 55',
  '213 1 3 7 3 13 59 17',
  '229 1 3 1 3 5 53 69',
  '239 1 1 5 5 23 33 13',
  '241 1 1 7 7 1 61 123',
  '247 1 1 7 9 13 61 49',
  '253 1 3 3 5 3 55 33',
  '285 1 3 1 15 31 13 49 245',
  '299 1 3 5 15 31 59 63 97',
  '301 1 3 1 11 11 11 77 249',
  '333 1 3 1 11 27 43 71 9',
  '351 1 1 7 15 21 11 81 45',
  '355 1 3 7 3 25 31 65 79',
  '357 1 3 1 1 19 11 3 205',
  '361 1 1 5 9 19 21 29 157',
  '369 1 3 7 11 1 33 89 185',
  '391 1 3 3 3 15 9 79 71',
  '397 1 3 7 11 15 39 119 27',
  '425 1 1 3 1 11 31 97 225',
  '451 1 1 1 3 23 43 57 177',
  '463 1 3 7 7 17 17 37 71',
  '487 1 3 1 5 27 63 123 213',
  '501 1 1 3 5 11 43 53 133',
  '529 1 3 5 5 29 17 47 173 479',
  '539 1 3 3 11 3 1 109 9 69',
  '545 1 1 1 5 17 39 23 5 343',
  '557 1 3 1 5 25 15 31 103 499',
  '563 1 1 1 11 11 17 63 105 183',
  '601 1 1 5 11 9 29 97 231 363',
  '607 1 1 5 15 19 45 41 7 383',
  '617 1 3 7 7 31 19 83 137 221',
  '623 1 1 1 3 23 15 111 223 83',
  '631 1 1 5 13 31 15 55 25 161',
  '637 1 1 3 13 25 47 39 87 257',
];
