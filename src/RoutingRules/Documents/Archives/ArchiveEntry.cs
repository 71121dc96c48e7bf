using System.IO.Compression;

namespace RoutingRules.Documents.Archives;

/// <summary>The name of an archive's entry, made harmless: nothing that reports say may lead out of the archive.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Name">Its name with slashes, as the archive has it.</param>
internal sealed record ArchiveEntry(ZipArchiveEntry Entry, string Name)
{
    public static ArchiveEntry Of(ZipArchiveEntry entry) => new(entry, entry.FullName.Replace('\\', '/'));

    /// <summary>The name with everything replaced that would lead elsewhere.</summary>
    public string SafeName =>
        string.Join(
            '/',
            Name.Split('/')
                .Select(
                    (part, i) =>
                        part is "" or "." or ".."
                            ? new string('_', Math.Max(1, part.Length))
                            : string.Concat(part.Select(letter => char.IsControl(letter) || (i == 0 && IsDrive(part) && letter == ':') ? '_' : letter))
                )
        );

    /// <summary>True for a folder, and for what some systems add to each file beside the files themselves (from memory).</summary>
    public bool IsNoFile => Name.EndsWith('/') || Name.StartsWith("__MACOSX/", StringComparison.Ordinal);

    /// <summary>Why the name cannot be one; null for a good name.</summary>
    public string? Problem => SafeName != Name ? "leads out of the archive, or holds an empty part or a control character" : null;

    private static bool IsDrive(string part) => part.Length == 2 && char.IsAsciiLetter(part[0]) && part[1] == ':';
}
