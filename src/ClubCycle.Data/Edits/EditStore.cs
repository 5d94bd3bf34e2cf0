namespace ClubCycle.Data.Edits;

public sealed class EditStore
{
    public const int LongestWords = 200;
}
