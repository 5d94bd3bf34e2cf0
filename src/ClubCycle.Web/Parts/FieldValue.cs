namespace ClubCycle.Web.Parts;

/// <summary>
/// A value that a browser's own field tells at each key. What was told comes back from the page a moment later: that echo must not write over what has been typed since.
/// </summary>
internal sealed class FieldValue<T>
    where T : struct, IEquatable<T>
{
    private T? _given;
    private T? _told;

    /// <summary>The page gives its value; true when the field must show it.</summary>
    public bool IsNews(T? value)
    {
        var news = !Nullable.Equals(value, _given) && !Nullable.Equals(value, _told);
        _given = value;
        _told = news ? value : _told;
        return news;
    }

    /// <summary>Somebody typed it; true when the page must be told.</summary>
    public bool IsChange(T? value)
    {
        var change = !Nullable.Equals(value, _told);
        _told = value;
        return change;
    }
}
