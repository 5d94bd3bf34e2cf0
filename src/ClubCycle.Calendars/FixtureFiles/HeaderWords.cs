using ClubCycle.Calendars.Sheets;

namespace ClubCycle.Calendars.FixtureFiles;

/// <summary>Words that head a column of matches, in English, German, Dutch, French and Spanish; without accents, lower case. From memory.</summary>
internal static class HeaderWords
{
    private static readonly HashSet<string> Date =
    [
        "date", "matchdate", "day",
        "datum", "spieldatum",
        "speeldatum", "wedstrijddatum", "speeldag",
        "jour",
        "fecha", "dia",
    ];

    private static readonly HashSet<string> Start =
    [
        "time", "start", "starts", "kickoff", "pushback",
        "zeit", "uhrzeit", "beginn", "spielbeginn", "anfang", "anpfiff", "anstoss", "anstoß",
        "tijd", "tijdstip", "aanvang", "aanvangstijd", "begintijd", "starttijd",
        "heure", "horaire", "debut",
        "hora", "horario", "inicio", "comienzo",
    ];

    private static readonly HashSet<string> Opponent =
    [
        "opponent", "opponents", "opposition", "against", "versus", "vs",
        "gegner", "gegnerin",
        "tegenstander", "tegenpartij",
        "adversaire",
        "rival", "oponente", "adversario", "contrincante",
    ];

    private static readonly HashSet<string> Note =
    [
        "home", "away", "ha",
        "heim", "auswarts",
        "thuis", "uit",
        "domicile", "exterieur",
        "casa", "local", "visitante",
    ];

    private static readonly HashSet<string> Place =
    [
        "venue", "place", "location", "ground", "pitch", "address",
        "ort", "spielort", "platz", "sportplatz", "adresse",
        "plaats", "locatie", "veld", "adres",
        "lieu", "terrain",
        "lugar", "sede", "campo", "direccion",
    ];

    /// <summary>Cells that say whose ground it is and not where that is.</summary>
    private static readonly HashSet<string> WhoseGround = [.. Note, "h", "a", "u", "g", "t", "d", "e", "c", "l", "v", "neutral"];

    public static bool MeanDate(string header) => Meets(header, Date);

    public static bool MeanStart(string header) => Meets(header, Start);

    public static bool MeanOpponent(string header) => Meets(header, Opponent);

    public static bool MeanNote(string header) => Meets(header, Note) || MeanPlace(header);

    public static bool MeanPlace(string header) => Meets(header, Place);

    /// <summary>Whether a cell says more than whose ground it is.</summary>
    public static bool NameAPlace(string cell) => !string.IsNullOrWhiteSpace(cell) && !HeaderText.Is(cell, WhoseGround);

    private static bool Meets(string header, HashSet<string> words) => HeaderText.Meets(header, words);
}
