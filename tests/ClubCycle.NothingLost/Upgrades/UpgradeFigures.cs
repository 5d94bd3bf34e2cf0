using ClubCycle.NothingLost.Kills;

namespace ClubCycle.NothingLost.Upgrades;

/// <param name="Lost">Each acknowledged change that is not there, each half publishing, each feed that stayed behind.</param>
/// <param name="LeftOut">Polls that were not sent, because the machine did not keep up.</param>
/// <param name="Steps">How long each took.</param>
/// <param name="NoneReady">How long no node was ready.</param>
internal sealed record UpgradeFigures(
    Journal Journal, IReadOnlyCollection<FeedAnswer> Answers, int LeftOut, IReadOnlyList<string> Lost, IReadOnlyDictionary<string, TimeSpan> Steps, TimeSpan NoneReady)
{
    public int ServerErrors => Answers.Count(a => a.Status >= 500);

    /// <summary>No poll of a link that is good is answered with anything but a calendar or the word that it has not changed.</summary>
    public bool AllIsWell => Journal.Failed.Count == 0 && Lost.Count == 0 && Answers.All(a => a.Status is 200 or 304);
}
