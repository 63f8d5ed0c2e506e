namespace CanopySim.Files.Tests.Fuzz;

/// <summary>Texts that have broken readers before, here or elsewhere: syntax, numbers, units, dates and letters.</summary>
internal static class OddTexts
{
    public static readonly string[] Numbers =
    [
        "0", "-0", "1", "-1", "1e999", "-1e999", "1e-999", "1.7976931348623157e308", "5e-324", "99999999999999999999", "2147483648", "-2147483649", "NaN", "nan", ".nan",
        "Infinity", "-Infinity", ".inf", "-.inf", "∞", "0x10", "0b1", "1_000", "1,5", "1.2.3", "--1", "+-1", "1e", "e1", ".", "-", "+", "٣", "½", "1e+9999", "-9999", "999", "9999", "999999",
    ];

    public static readonly string[] Units =
    [
        "m", "cm", "mm", "km", "ft", "in", "'", "\"", "kg", "lb", "g", "d", "h", "s", "degC", "°C", "°F", "K", "degC d", "degF d", "umol m-2 s-1", "µmol m⁻² s⁻¹", "umol mol-1", "ppm",
        "kPa", "hPa", "Pa", "Brix", "deg", "rad", "%", "1/m", "m-1", "W m-2", "MJ m-2 d-1", "m/s", "mph", "km/h", "m^99", "m-99", "m0", "1/m/s", "per", "/", "//", "m m m m m m m m m",
    ];

    public static readonly string[] Dates =
    [
        "2014-02-30", "2016-02-29", "2015-02-29", "0001-01-01", "9999-12-31", "1849-12-31", "2201-01-01", "10000-01-01", "2014-13-01", "2014-00-10", "2014-1-1", "20140401", "01/04/2014", "2014/04/01",
        "2014-04-01T24:00", "2014-04-01T25:00Z", "2014-04-01T00:00+99:99", "2014-04-01T00:00-14:00", "1850-01-01T00:00+14:00", "2200-12-31T24:00", "2014-04-01 05:30", "2014-W14-2",
    ];

    public static readonly string[] Tokens =
    [
        "", " ", "\t", "\n", "\r", "\r\n", ",", ";", ":", ": ", "- ", "#", " #", "\"", "'", "[", "]", "{", "}", "&a ", "*a", "!!float ", "!<tag:a> ", "|", "|9\n", ">", ">-\n", "%", "%YAML 9.9\n",
        "@", "`", "---\n", "...\n", "<<: *a\n", "? ", "? [a]: b\n", "~", "null", "true", "yes", "2,4", "2.4 kg", "8 ft", "6' 3\"", "30 %", "(", ")", "[W]", "(m", "based_on: block.yaml\n",
        "based_on: base.yaml\n", "based_on: ../\n", "based_on: \"\\0\"\n", "file: /dev/null\n", "LOCATION,", "\0", "\u0007", "\u001B[31m", "\u0085", "\uFEFF", "\u2028", "\u202E", "\u00A0", "é", "e\u0301",
        "😀", "\\x00", "\"\\0\"", "\"\\uD800\"", "\"\\U99999999\"", "\"\\", .. Numbers, .. Units, .. Dates,
    ];
}
