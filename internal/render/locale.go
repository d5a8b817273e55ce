package render

import (
	"fmt"
	"slices"
	"strings"
)

// Locale is how numbers are written where a CSV text is opened. The zero value is the decimal point, and commas between cells.
type Locale struct{ decimalComma bool }

// What locales there are and which write the decimal comma: the Unicode CLDR, to which the tests hold it. The library that has all
// of that sets tables up before main, a tenth of what the whole program takes to start.
const (
	commaLanguages = " af az be bg br bs ca cs da de el eo es et eu ff fi fo fr fy gl hr hu hy id is it ka kk kl km ky lb ln lo lt lu lv mk nb nl nn os pl pt rn ro ru rw se sg sk sl sq sr sv tg tk tr tt uk uz vi wo "
	pointLanguages = " ak am ar as bm bn bo ce cy dz ee en fa ga gd gu gv ha he hi ig ii ja ki kn ko ks kw lg mg ml mn mr ms mt my nd ne no om or pa ps qu rm sd si sn so sw ta te th ti to ug ur yi yo zh zu "
	// The locales of a country whose language has it the other way elsewhere.
	otherWay  = " ar-DZ ar-LB ar-LY ar-MA ar-MR ar-TN az-IQ az-IR de-CH de-LI en-AT en-BE en-CH en-DE en-DK en-FI en-NL en-SE en-SI en-ZA es-BR es-BZ es-CU es-DO es-GT es-HN es-MX es-NI es-PA es-PE es-PR es-SV es-US it-CH kk-AF kk-CN kk-IR kk-MN ky-CN ky-TR ms-BN ps-AF qu-BO sw-CD tg-PK "
	countries = " AC AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ CA CC CD CF CG CH CI CK CL CM CN CO CP CR CU CV CW CX CY CZ DE DG DJ DK DM DO DZ EA EC EE EG EH ER ES ET FI FJ FK FM FO FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM HN HR HT HU IC ID IE IL IM IN IO IQ IR IS IT JE JM JO JP KE KG KH KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO MP MQ MR MS MT MU MV MW MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW PY QA RE RO RS RU RW SA SB SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TA TC TD TF TG TH TJ TK TL TM TN TO TR TT TV TW TZ UA UG UM US UY UZ VA VC VE VG VI VN VU WF WS XK YE YT ZA ZM ZW "
)

// ReadLocale is the locale of a name as systems and web pages write it: "de", "fr-CA", "pt_BR.UTF-8". The error is a sentence.
func ReadLocale(name string) (Locale, error) {
	text, _, _ := strings.Cut(name, ".")
	language, country, both := strings.Cut(strings.ReplaceAll(text, "_", "-"), "-")
	language, country = strings.ToLower(language), strings.ToUpper(country)
	comma := listed(commaLanguages, language)
	if !comma && !listed(pointLanguages, language) || both && !listed(countries, country) {
		return Locale{}, fmt.Errorf("no locale is called %q", name)
	}
	return Locale{decimalComma: comma != listed(otherWay, language+"-"+country)}, nil
}

// listed says whether a word stands in a list with blanks between.
func listed(list, word string) bool { return slices.Contains(strings.Fields(list), word) }

// number is a decimal number as it is written there.
func (l Locale) number(text string) string {
	if l.decimalComma {
		return strings.ReplaceAll(text, ".", ",")
	}
	return text
}

// separator stands between cells: a semicolon where the comma is in numbers. Common practice, no source.
func (l Locale) separator() rune {
	if l.decimalComma {
		return ';'
	}
	return ','
}
