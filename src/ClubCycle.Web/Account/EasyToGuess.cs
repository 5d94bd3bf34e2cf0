namespace ClubCycle.Web.Account;

/// <summary>The parts of a password that guessing programs try first.</summary>
internal static class EasyToGuess
{
    private const int ShortestWalk = 4;

    // The alphabet, and keyboards along their rows and down their columns; each backwards, too.
    private static readonly string[] Walks = [.. new[]
    {
        "abcdefghijklmnopqrstuvwxyz", "01234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm", "qwertzuiopü", "yxcvbnm", "azertyuiop", "qsdfghjklm", "wxcvbn",
        "1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p", "!@#$%^&*()",
    }.SelectMany(walk => new[] { walk, new string([.. walk.Reverse()]) })];

    // Passwords in common use; from memory, no list was copied.
    private static readonly string[] Common = Read();

    /// <summary>How many characters are left when repetition, walks, common passwords and these words are taken out; beside a word, digits and signs are padding and count for nothing.</summary>
    public static int Left(string password, IReadOnlyList<string> words)
    {
        var rest = WithoutWalks(Once(password.ToLowerInvariant()));
        var tame = rest;
        foreach (var word in Common.Concat(words.Select(w => w.ToLowerInvariant())).OrderByDescending(w => w.Length))
        {
            tame = tame.Replace(word, " ", StringComparison.Ordinal);
            tame = Plain(tame).Contains(word, StringComparison.Ordinal) ? Plain(tame).Replace(word, " ", StringComparison.Ordinal) : tame;
        }

        return tame == rest ? rest.Length : tame.Count(char.IsLetter);
    }

    /// <summary>The part that is repeated to make up the whole; the text itself when none is.</summary>
    private static string Once(string text)
    {
        var part = Enumerable.Range(1, text.Length / 2).FirstOrDefault(length => Enumerable.Range(0, text.Length - length).All(i => text[i] == text[i + length]));
        return part == 0 ? text : text[..part];
    }

    /// <summary>Each walk of four or more, and each run of one character, counts as its first character.</summary>
    private static string WithoutWalks(string text)
    {
        var kept = new List<char>();
        for (var i = 0; i < text.Length;)
        {
            kept.Add(text[i]);
            var run = 1;
            while (i + run < text.Length && text[i + run] == text[i])
            {
                run++;
            }

            var walk = ShortestWalk;
            while (i + walk <= text.Length && Walks.Any(w => w.Contains(text.Substring(i, walk), StringComparison.Ordinal)))
            {
                walk++;
            }

            i += Math.Max(run >= 3 ? run : 1, walk > ShortestWalk ? walk - 1 : 1);
        }

        return string.Concat(kept);
    }

    /// <summary>Digits and signs that stand for letters read as those.</summary>
    private static string Plain(string text) => string.Concat(text.Select(sign => sign switch { '0' => 'o', '1' or '!' => 'i', '3' => 'e', '4' or '@' => 'a', '5' or '$' => 's', '7' => 't', _ => sign }));

    private static string[] Read()
    {
        using var file = typeof(EasyToGuess).Assembly.GetManifestResourceStream("common-passwords.txt")!;
        using var reader = new StreamReader(file);
        return [.. reader.ReadToEnd().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];
    }
}
