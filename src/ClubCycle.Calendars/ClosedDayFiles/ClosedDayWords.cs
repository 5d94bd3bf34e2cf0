using ClubCycle.Calendars.Sheets;

namespace ClubCycle.Calendars.ClosedDayFiles;

/// <summary>Words that head a column of holidays, in English, German, Dutch, French and Spanish; without accents, lower case. From memory.</summary>
internal static class ClosedDayWords
{
    private static readonly HashSet<string> First =
    [
        "from", "first", "start", "starts", "begin", "begins", "date", "day",
        "von", "ab", "beginn", "anfang", "ersterferientag", "datum",
        "van", "vanaf", "eerste",
        "du", "debut", "jour",
        "desde", "inicio", "comienzo", "fecha", "dia",
    ];

    private static readonly HashSet<string> Last =
    [
        "to", "last", "until", "till", "end", "ends", "through",
        "bis", "ende", "letzterferientag",
        "tot", "einde", "laatste",
        "au", "fin",
        "hasta", "final",
    ];

    private static readonly HashSet<string> Why =
    [
        "why", "reason", "name", "holiday", "holidays", "what", "title", "description", "event",
        "grund", "ferien", "feiertag", "bezeichnung", "anlass",
        "reden", "vakantie", "feestdag", "naam", "omschrijving",
        "motif", "raison", "vacances", "nom", "ferie",
        "motivo", "vacaciones", "nombre", "festivo", "descripcion",
    ];

    /// <remarks>"First day" and "last day" both hold "day", so the last day is asked for first.</remarks>
    public static bool MeanLast(string header) => HeaderText.Meets(header, Last);

    public static bool MeanFirst(string header) => HeaderText.Meets(header, First) && !MeanLast(header);

    public static bool MeanWhy(string header) => HeaderText.Meets(header, Why);
}
