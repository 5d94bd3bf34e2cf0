using PublicHoliday;

namespace ClubCycle.Calendars.Holidays;

/// <summary>Where the holidays of each country come from; the only file that names the library's countries.</summary>
/// <param name="Whole">What the whole country has.</param>
internal sealed record HolidaySource(string Country, Func<IPublicHolidays> Whole, IReadOnlyDictionary<string, Func<IPublicHolidays>> Regions);

internal static class HolidaySources
{
    public static IReadOnlyList<HolidaySource> All { get; } =
    [
        new("Austria", () => new AustriaPublicHoliday(), None),
        new("Belgium", () => new BelgiumPublicHoliday(), None),
        new("Brazil", () => new BrazilPublicHoliday(), None),
        new("Croatia", () => new CroatiaPublicHoliday(), None),
        new("Czechia", () => new CzechRepublicPublicHoliday(), None),
        new("Denmark", () => new DenmarkPublicHoliday(), None),
        new("Estonia", () => new EstoniaPublicHoliday(), None),
        new("Greece", () => new GreecePublicHoliday(), None),
        new("Hungary", () => new HungaryPublicHoliday(), None),
        new("Ireland", () => new IrelandPublicHoliday(), None),
        new("Italy", () => new ItalyPublicHoliday(), None),
        new("Japan", () => new JapanPublicHoliday(), None),
        new("Kazakhstan", () => new KazakhstanPublicHoliday(), None),
        new("Latvia", () => new LatviaPublicHoliday(), None),
        new("Lithuania", () => new LithuaniaPublicHoliday(), None),
        new("Luxembourg", () => new LuxembourgPublicHoliday(), None),
        new("Mexico", () => new MexicoPublicHoliday(), None),
        new("Montenegro", () => new MontenegroPublicHoliday(), None),
        new("Netherlands", () => new DutchPublicHoliday(), None),
        new("Norway", () => new NorwayPublicHoliday(), None),
        new("Poland", () => new PolandPublicHoliday(), None),
        new("Romania", () => new RomanianPublicHoliday(), None),
        new("Serbia", () => new SerbianPublicHoliday(), None),
        new("Slovakia", () => new SlovakiaPublicHoliday(), None),
        new("Slovenia", () => new SloveniaPublicHoliday(), None),
        new("South Africa", () => new SouthAfricaPublicHoliday(), None),
        new("Spain", () => new SpainPublicHoliday(), None),
        new("Sweden", () => new SwedenPublicHoliday(), None),
        new("Turkey", () => new TurkeyPublicHoliday(), None),
        new("United States", () => new USAPublicHoliday(), None),
        new("Finland", () => new FinlandPublicHoliday(includeNonOfficialHolidays: false), None),
        new("Australia", () => new AustraliaPublicHoliday(), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Australian Capital Territory"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.ACT },
            ["New South Wales"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.NSW },
            ["Northern Territory"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.NT },
            ["Queensland"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.QLD },
            ["South Australia"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.SA },
            ["Tasmania"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.TAS },
            ["Victoria"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.VIC },
            ["Western Australia"] = () => new AustraliaPublicHoliday { State = AustraliaPublicHoliday.States.WA },
        }),
        new("Canada", () => new CanadaPublicHoliday(), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Alberta"] = () => new CanadaPublicHoliday("AB"),
            ["British Columbia"] = () => new CanadaPublicHoliday("BC"),
            ["Manitoba"] = () => new CanadaPublicHoliday("MB"),
            ["New Brunswick"] = () => new CanadaPublicHoliday("NB"),
            ["Newfoundland and Labrador"] = () => new CanadaPublicHoliday("NL"),
            ["Nova Scotia"] = () => new CanadaPublicHoliday("NS"),
            ["Northwest Territories"] = () => new CanadaPublicHoliday("NT"),
            ["Nunavut"] = () => new CanadaPublicHoliday("NU"),
            ["Ontario"] = () => new CanadaPublicHoliday("ON"),
            ["Prince Edward Island"] = () => new CanadaPublicHoliday("PE"),
            ["Quebec"] = () => new CanadaPublicHoliday("QC"),
            ["Saskatchewan"] = () => new CanadaPublicHoliday("SK"),
            ["Yukon"] = () => new CanadaPublicHoliday("YT"),
        }),
        new("France", () => new FrancePublicHoliday(), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Alsace and Moselle"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.AlsaceMoselle },
            ["Guadeloupe"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.Guadeloupe },
            ["French Guiana"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.Guyane },
            ["Réunion"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.Reunion },
            ["Martinique"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.Martinique },
            ["Mayotte"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.Mayotte },
            ["New Caledonia"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.NouvelleCaledonie },
            ["French Polynesia"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.PolynesieFrancaise },
            ["Saint Barthélemy"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.SaintBarthelemy },
            ["Saint Martin"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.SaintMartin },
            ["Wallis and Futuna"] = () => new FrancePublicHoliday { Region = FrancePublicHoliday.Regions.WallisEtFutuna },
        }),
        new("Germany", () => new GermanPublicHoliday { State = GermanPublicHoliday.States.ALL }, new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Baden-Württemberg"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.BW },
            ["Bavaria"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.BY },
            ["Berlin"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.BE },
            ["Brandenburg"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.BB },
            ["Bremen"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.HB },
            ["Hamburg"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.HH },
            ["Hesse"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.HE },
            ["Mecklenburg-Western Pomerania"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.MV },
            ["Lower Saxony"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.NI },
            ["North Rhine-Westphalia"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.NW },
            ["Rhineland-Palatinate"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.RP },
            ["Saarland"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.SL },
            ["Saxony"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.SN },
            ["Saxony-Anhalt"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.ST },
            ["Schleswig-Holstein"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.SH },
            ["Thuringia"] = () => new GermanPublicHoliday { State = GermanPublicHoliday.States.TH },
        }),
        new("New Zealand", () => new NewZealandPublicHoliday(), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Northland"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.NORTHLAND },
            ["Auckland"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.AUCKLAND },
            ["Taranaki"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.TARANAKI },
            ["Hawke's Bay"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.HAWKES_BAY },
            ["Wellington"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.WELLINGTON },
            ["Marlborough"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.MARLBOROUGH },
            ["Nelson"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.NELSON },
            ["Canterbury"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.CANTERBURY },
            ["South Canterbury"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.SOUTH_CANTERBURY },
            ["Westland"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.WESTLAND },
            ["Otago"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.OTAGO },
            ["Southland"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.SOUTHLAND },
            ["Chatham Islands"] = () => new NewZealandPublicHoliday { ProvincialDistrict = NewZealandPublicHoliday.ProvincialDistricts.CHATHAM_ISLANDS },
        }),
        new("Portugal", () => new PortugalPublicHoliday(), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Madeira"] = () => new PortugalPublicHoliday { Region = PortugalPublicHoliday.Regions.Madeira },
            ["Azores"] = () => new PortugalPublicHoliday { Region = PortugalPublicHoliday.Regions.Acores },
        }),
        new("Switzerland", () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["Aargau"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.AG },
            ["Appenzell Innerrhoden"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.AI },
            ["Appenzell Ausserrhoden"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.AR },
            ["Basel-Landschaft"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.BL },
            ["Basel-Stadt"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.BS },
            ["Bern"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.BE },
            ["Fribourg"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.FR },
            ["Geneva"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.GE },
            ["Glarus"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.GL },
            ["Grisons"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.GR },
            ["Jura"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.JU },
            ["Lucerne"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.LU },
            ["Neuchâtel"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.NE },
            ["Nidwalden"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.NW },
            ["Obwalden"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.OW },
            ["St. Gallen"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.SG },
            ["Schaffhausen"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.SH },
            ["Schwyz"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.SZ },
            ["Solothurn"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.SO },
            ["Thurgau"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.TG },
            ["Ticino"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.TI },
            ["Uri"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.UR },
            ["Valais"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.VS },
            ["Vaud"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.VD },
            ["Zug"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.ZG },
            ["Zurich"] = () => new SwitzerlandPublicHoliday(hasSecondJanuary: false, hasLaborDay: false, hasCorpusChristi: false) { Canton = SwitzerlandPublicHoliday.Cantons.ZH },
        }),
        new("United Kingdom", () => new UKBankHoliday(), new Dictionary<string, Func<IPublicHolidays>>
        {
            ["England"] = () => new UKBankHoliday(UKBankHoliday.UkCountries.England),
            ["Wales"] = () => new UKBankHoliday(UKBankHoliday.UkCountries.Wales),
            ["Scotland"] = () => new UKBankHoliday(UKBankHoliday.UkCountries.Scotland),
            ["Northern Ireland"] = () => new UKBankHoliday(UKBankHoliday.UkCountries.NorthernIreland),
        }),
    ];

    private static IReadOnlyDictionary<string, Func<IPublicHolidays>> None => new Dictionary<string, Func<IPublicHolidays>>();
}
