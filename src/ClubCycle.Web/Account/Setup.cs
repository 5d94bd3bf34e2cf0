using ClubCycle.Data;
using ClubCycle.Data.Accounts;
using ClubCycle.Data.Clubs;
using ClubCycle.Planning;
using Microsoft.AspNetCore.Identity;

namespace ClubCycle.Web.Account;

/// <summary>The first run: makes the club and its head coach, once.</summary>
internal sealed class Setup(ClubStore clubs, UserManager<ClubUser> users, SetupOnce once)
{
    public async Task<bool> IsDoneAsync(CancellationToken cancel) => once.IsDone || (once.IsDone = await clubs.AnyAsync(cancel));

    /// <summary>The head coach, or what to put right.</summary>
    public async Task<Result<ClubUser>> RunAsync(SetupForm form, CancellationToken cancel)
    {
        await once.Turn.WaitAsync(cancel);
        try
        {
            return await clubs.AnyAsync(cancel)
                ? new Problem("setup.done", "The club is set up already. Sign in instead.")
                : await MakeAsync(form, cancel);
        }
        finally
        {
            once.Turn.Release();
        }
    }

    private async Task<Result<ClubUser>> MakeAsync(SetupForm form, CancellationToken cancel)
    {
        var coach = new ClubUser { Id = NewId.Create(), DisplayName = TypedText.Tidy(form.Name), Email = form.Email.Trim(), UserName = form.Email.Trim(), Role = ClubRole.HeadCoach };
        List<Problem> problems = [.. form.CheckPerson(), .. await PasswordProblemsAsync(coach, form.Password)];
        if (problems.Count > 0)
        {
            return new Result<ClubUser>.Failed(problems);
        }

        switch (await clubs.CreateAsync(form.Club, form.TimeZone.Trim(), form.FirstWeekday, form.AsksSecondFactor, cancel))
        {
            case Result<Guid>.Ok(var club):
                coach.ClubId = club;
                break;
            case Result<Guid>.Failed failed:
                return new Result<ClubUser>.Failed(failed.Problems);
        }

        var made = await users.CreateAsync(coach, form.Password);
        if (made.Succeeded)
        {
            return coach;
        }

        await clubs.RemoveUnusedAsync(coach.ClubId, cancel);
        return new Result<ClubUser>.Failed(AccountProblems.Of(made));
    }

    private async Task<IEnumerable<Problem>> PasswordProblemsAsync(ClubUser coach, string password)
    {
        foreach (var rule in users.PasswordValidators)
        {
            if (await rule.ValidateAsync(users, coach, password) is { Succeeded: false } refused)
            {
                return AccountProblems.Of(refused);
            }
        }

        return [];
    }
}
