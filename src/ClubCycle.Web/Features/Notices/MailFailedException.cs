namespace ClubCycle.Web.Features.Notices;

/// <summary>The mail server did not take a notice. It names neither an address nor a password.</summary>
public sealed class MailFailedException(string message) : Exception(message);
