using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Resources;

namespace ClubCycle.Planning.Languages;

/// <summary>Translations as an assembly carries them: resource files <c>Languages/NAME.CODE.resx</c> whose keys are the English texts.</summary>
public static class PhraseFiles
{
    /// <summary>Names of resources do not tell capitals from small letters: where two texts differ only in them, one has this sign in front.</summary>
    private const char Apart = '^';

    /// <returns>Translations by English text; empty for English. Later files win.</returns>
    public static IReadOnlyDictionary<string, string> Read(Assembly assembly, Language language, params ReadOnlySpan<string> files)
    {
        Dictionary<string, string> phrases = new(StringComparer.Ordinal);
        foreach (var file in files)
        {
            var name = $"Languages/{file}.{language.Code()}";
            if (assembly.GetManifestResourceInfo(name + ".resources") is null)
            {
                continue;
            }

            using var set = new ResourceManager(name, assembly).GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!;
            foreach (DictionaryEntry entry in set)
            {
                phrases[((string)entry.Key).TrimStart(Apart)] = (string)entry.Value!;
            }
        }

        return phrases;
    }
}
