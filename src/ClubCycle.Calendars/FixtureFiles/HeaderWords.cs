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
        "home", "away", "ha", "venue", "place", "location", "ground", "pitch",
        "heim", "auswarts", "ort", "spielort", "platz",
        "thuis", "uit", "plaats", "locatie", "veld",
        "domicile", "exterieur", "lieu", "terrain",
        "casa", "local", "visitante", "lugar", "sede", "campo",
    ];

    public static bool MeanDate(string header) => Meets(header, Date);

    public static bool MeanStart(string header) => Meets(header, Start);

    public static bool MeanOpponent(string header) => Meets(header, Opponent);

    public static bool MeanNote(string header) => Meets(header, Note);

    private static bool Meets(string header, HashSet<string> words) => HeaderText.Meets(header, words);
}
