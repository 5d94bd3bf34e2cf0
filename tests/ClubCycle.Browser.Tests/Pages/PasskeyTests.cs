using System.Text.Json;
using Microsoft.Playwright;

namespace ClubCycle.Browser.Tests.Pages;

/// <summary>A passkey from its making to its end, with Chromium's own make-believe device.</summary>
[Collection(Chromium.SecondLane)]
public sealed class PasskeyTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string Password = "window tractor lemon 42";

    [Fact]
    public async Task A_head_coach_who_owes_a_second_factor_adds_a_passkey_signs_in_with_it_and_removes_it()
    {
        await using var app = await RunningApp.StartAsync("--empty");
        await using var office = await chromium.NewPersonAsync();
        var page = await office.NewPageAsync();
        var (device, id) = await DeviceAsync(office, page);

        // A passkey belongs to a name, never to a bare address of numbers.
        var address = app.Address.Replace("127.0.0.1", "localhost", StringComparison.Ordinal);
        await SetUpAsync(page, address);
        await page.GetByText("Your club asks head coaches").WaitForAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Passkeys" }).ClickAsync();
        await page.GetByLabel("Name of the device").FillAsync("Office computer");
        await page.GetByLabel("Current password").FillAsync("not the password");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" }).ClickAsync();
        await page.GetByText("The password is not right").WaitForAsync();
        Assert.Empty(await KeysAsync(device, id));

        await page.GetByLabel("Current password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" }).ClickAsync();
        await page.GetByText("Office computer").First.WaitForAsync();
        Assert.Single(await KeysAsync(device, id));
        List<string> wrong = [.. await page.LookEverywhereAsync("passkey-added")];
        await page.GotoAsync(address + "/squads");
        Assert.EndsWith("/squads", page.Url, StringComparison.Ordinal);

        // Without a finger the key is not both factors, and opens nothing.
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await device.SendAsync("WebAuthn.setUserVerified", new() { ["authenticatorId"] = id, ["isUserVerified"] = false });
        await page.GetByRole(AriaRole.Button, new() { Name = "Use a passkey" }).ClickAsync();
        await page.GetByText("No passkey was shown").WaitForAsync();
        await device.SendAsync("WebAuthn.setUserVerified", new() { ["authenticatorId"] = id, ["isUserVerified"] = true });
        await page.GetByRole(AriaRole.Button, new() { Name = "Use a passkey" }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(address + "/");

        // The password alone still owes one.
        await page.GotoAsync(address + "/account/passkeys");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GetByLabel("E-mail").FillAsync("robin@example.org");
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(address + "/account/second-factor");

        await page.GetByRole(AriaRole.Link, new() { Name = "Passkeys" }).ClickAsync();
        await page.GetByLabel("Current password").Last.FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove it" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Office computer")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Use a passkey" }).ClickAsync();
        await page.GetByText("This passkey does not count here").WaitForAsync();
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static async Task SetUpAsync(IPage page, string address)
    {
        await page.GotoAsync(address + "/setup");
        await page.GetByLabel("Name of the club").FillAsync("Sandhaven");
        await page.GetByLabel("Time zone").FillAsync("Europe/Lisbon");
        await page.GetByLabel("Your name").FillAsync("Robin");
        await page.GetByLabel("E-mail").FillAsync("robin@example.org");
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Create the club" }).ClickAsync();
    }

    private static async Task<(ICDPSession Device, string Id)> DeviceAsync(IBrowserContext person, IPage page)
    {
        var device = await person.NewCDPSessionAsync(page);
        await device.SendAsync("WebAuthn.enable");
        var made = await device.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2", ["transport"] = "internal", ["hasResidentKey"] = true, ["hasUserVerification"] = true, ["isUserVerified"] = true, ["automaticPresenceSimulation"] = true,
            },
        });
        return (device, made!.Value.GetProperty("authenticatorId").GetString()!);
    }

    private static async Task<List<JsonElement>> KeysAsync(ICDPSession device, string id) =>
        [.. (await device.SendAsync("WebAuthn.getCredentials", new() { ["authenticatorId"] = id }))!.Value.GetProperty("credentials").EnumerateArray()];
}
