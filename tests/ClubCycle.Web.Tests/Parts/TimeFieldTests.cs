using Bunit;
using ClubCycle.Web.Parts;
using NodaTime;

namespace ClubCycle.Web.Tests.Parts;

public sealed class TimeFieldTests
{
    /// <summary>Blazor's own script sends seconds even when the browser's field has none.</summary>
    [Theory]
    [InlineData("17:45")]
    [InlineData("17:45:00")]
    public async Task A_typed_time_is_taken_with_and_without_seconds(string sent) => Assert.Equal(new LocalTime(17, 45), await ChangedAsync(sent));

    [Theory]
    [InlineData("")]
    [InlineData("25:00")]
    public async Task An_emptied_field_is_no_time(string sent) => Assert.Null(await ChangedAsync(sent));

    private static async Task<LocalTime?> ChangedAsync(string sent)
    {
        await using var context = new BunitContext();
        LocalTime? value = new LocalTime(18, 0);
        var field = context.Render<TimeField>(p => p.Add(c => c.Id, "start").Add(c => c.Label, "Start").Add(c => c.Value, value).Add(c => c.ValueChanged, time => value = time));
        await field.Find("input").ChangeAsync(new() { Value = sent });
        return value;
    }
}
