using Bunit;
using ClubCycle.Web.Parts;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;

namespace ClubCycle.Web.Tests.Parts;

public sealed class ConfirmTests
{
    [Theory]
    [InlineData("Publish to players", true)]
    [InlineData("Leave as it is", false)]
    public async Task The_verb_is_a_yes_and_leaving_is_a_no(string button, bool expected)
    {
        await using var context = new BunitContext();
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        context.Services.AddMudServices();
        var provider = context.Render<MudDialogProvider>();
        var dialogs = context.Services.GetRequiredService<IDialogService>();

        Task<bool>? answer = null;
        await provider.InvokeAsync(() => { answer = Confirm.AskAsync(dialogs, "Publish to 18 players?", "Their calendars change.", "Publish to players"); });
        Assert.Contains("Publish to 18 players?", provider.Markup, StringComparison.Ordinal);
        await provider.FindAll("button").Single(b => b.TextContent == button).ClickAsync(new());

        Assert.Equal(expected, await answer!);
    }
}
