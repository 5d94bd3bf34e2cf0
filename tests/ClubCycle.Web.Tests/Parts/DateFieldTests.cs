using Bunit;
using ClubCycle.Web.Parts;
using NodaTime;

namespace ClubCycle.Web.Tests.Parts;

public sealed class DateFieldTests : IAsyncDisposable
{
    private static readonly LocalDate Saturday = new(2027, 2, 13);

    private readonly BunitContext _context = new();
    private readonly List<LocalDate?> _told = [];

    [Fact]
    public void A_year_is_told_when_all_of_it_is_typed()
    {
        var field = Field(Saturday);

        Type(field, "2027-02-14", "0002-02-14", "0020-02-14", "0202-02-14", "2027-02-14", "2028-02-14");

        Assert.Equal([new LocalDate(2027, 2, 14), new LocalDate(2028, 2, 14)], _told);
    }

    [Fact]
    public void What_the_page_was_told_does_not_write_over_what_was_typed_since()
    {
        var field = Field(Saturday);
        Type(field, "2027-02-14", "0002-02-14");

        field.Render(p => p.Add(f => f.Value, new LocalDate(2027, 2, 14)));

        Assert.Equal("0002-02-14", Shown(field));
    }

    [Fact]
    public void Another_day_from_the_page_is_shown()
    {
        var field = Field(Saturday);
        Type(field, "2027-02-14");

        field.Render(p => p.Add(f => f.Value, new LocalDate(2027, 2, 14)));
        field.Render(p => p.Add(f => f.Value, Saturday));

        Assert.Equal("2027-02-13", Shown(field));
    }

    [Fact]
    public void An_emptied_field_is_told_and_stays_empty()
    {
        var field = Field(Saturday);

        Type(field, "");
        field.Render(p => p.Add(f => f.Value, null));

        Assert.Equal((LocalDate?)null, Assert.Single(_told));
        Assert.Equal("", Shown(field));
    }

    public ValueTask DisposeAsync() => _context.DisposeAsync();

    private IRenderedComponent<DateField> Field(LocalDate value) =>
        _context.Render<DateField>(p => p.Add(f => f.Id, "day").Add(f => f.Label, "Day").Add(f => f.Value, value).Add(f => f.ValueChanged, day => _told.Add(day)));

    private static void Type(IRenderedComponent<DateField> field, params string[] values) => Array.ForEach(values, value => field.Find("input").Change(value));

    private static string Shown(IRenderedComponent<DateField> field) => field.Find("input").GetAttribute("value") ?? "";
}
