using System.Text.Json;

namespace ClubCycle.Data.Notices;

/// <summary>A notice as the outbox keeps it. The address is looked up when it is sent, so that one taken away gets nothing.</summary>
public sealed record NoticeToSend(int Revision, string Subject, string Text)
{
    public string Write() => JsonSerializer.Serialize(this);

    public static NoticeToSend Read(string? body) =>
        JsonSerializer.Deserialize<NoticeToSend>(body ?? "null") ?? throw new FormatException("A notice in the outbox has no body.");
}
