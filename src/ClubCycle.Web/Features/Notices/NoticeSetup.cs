using ClubCycle.Web.Features.Outbox;
using Microsoft.Extensions.Options;

namespace ClubCycle.Web.Features.Notices;

internal static class NoticeSetup
{
    /// <summary>Notices can always be read and copied; they are sent only when a mail server is set.</summary>
    public static IServiceCollection AddNotices(this IServiceCollection services, IConfiguration settings)
    {
        var section = settings.GetSection(MailOptions.Section);
        services.AddScoped<NoticeActions>();
        services.AddOptions<MailOptions>().Bind(section).ValidateOnStart();
        services.AddSingleton<IValidateOptions<MailOptions>, MailOptionsCheck>();
        if (!string.IsNullOrWhiteSpace(section[nameof(MailOptions.Host)]))
        {
            services.AddSingleton<IOutboxWork, SendNotice>();
        }

        return services;
    }

    private sealed class MailOptionsCheck : IValidateOptions<MailOptions>
    {
        public ValidateOptionsResult Validate(string? name, MailOptions options) =>
            options.Problem is { } problem ? ValidateOptionsResult.Fail(problem) : ValidateOptionsResult.Success;
    }
}
