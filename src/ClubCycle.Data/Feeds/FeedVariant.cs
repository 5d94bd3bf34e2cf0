namespace ClubCycle.Data.Feeds;

/// <summary>Names of the texts that a squad's plan has in feeds.</summary>
public static class FeedVariant
{
    /// <summary>Behind the options' code: the same times without what to do, for players who owe the health questions.</summary>
    public const string Waiting = "-w";

    /// <param name="options">A code of <see cref="Planning.Feeds.FeedOptions"/>.</param>
    public static string Of(string options, bool waiting) => waiting ? options + Waiting : options;
}
