#pragma warning disable RS0030 // An archive is a file that somebody named.
using System.Globalization;
using System.IO.Compression;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents.Archives;

/// <summary>The shows of a zip archive. Nothing is unpacked to disk, and nothing that the archive says about sizes is believed.</summary>
/// <remarks>Never throws for what an archive holds. Not thread safe. In memory are the list of entries and one show at a time.</remarks>
public sealed class ShowArchive : IDisposable
{
    /// <summary>What names of archives end with, in small or large letters.</summary>
    public const string Suffix = ".zip";

    /// <summary>What names of shows in an archive or a folder end with.</summary>
    public const string ShowSuffix = ".show.json";

    private const int FirstBuffer = 64 * 1024;

    private readonly string path;
    private readonly ReadLimits limits;
    private readonly ZipArchive? zip;
    private readonly List<ArchiveEntry> shows = [];
    private readonly DocumentFile? failure;
    private long left;

    private ShowArchive(string path, ReadLimits limits, ZipArchive zip)
    {
        this.path = path;
        this.limits = limits;
        this.zip = zip;
        var nested = new List<string>();
        foreach (var entry in zip.Entries.Select(ArchiveEntry.Of).Where(entry => !entry.IsNoFile))
        {
            if (entry.Name.EndsWith(ShowSuffix, StringComparison.Ordinal))
            {
                shows.Add(entry);
            }
            else if (entry.Name.EndsWith(Suffix, StringComparison.OrdinalIgnoreCase))
            {
                nested.Add(entry.Name);
            }
        }

        shows.Sort(static (first, second) => string.CompareOrdinal(first.Name, second.Name));
        nested.Sort(StringComparer.Ordinal);
        Nested = nested.ToValueList();
        failure =
            shows.Count > 0
                ? null
                : DocumentFile.Failed(
                    path,
                    $"The archive holds no file named *{ShowSuffix}{(nested.Count == 0 ? "" : ", only archives inside the archive, which are not opened")}.",
                    "Name another archive, or take the shows out of what is in it."
                );
    }

    private ShowArchive(DocumentFile failure)
    {
        path = failure.Path;
        limits = ReadLimits.Default;
        this.failure = failure;
    }

    /// <summary>The names of archives inside the archive, in ordinal order; they are not opened.</summary>
    public ValueList<string> Nested { get; }

    /// <summary>Opens an archive; what is wrong with it is told by <see cref="Read"/>.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static ShowArchive Open(string path, ReadLimits? limits = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        FileStream? file = null;
        ZipArchive? zip = null;
        try
        {
            file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            if (!file.CanSeek)
            {
                file.Dispose();
                return new ShowArchive(DocumentFile.Failed(path, "An archive cannot be read from a pipe.", "Save it to a file, and name that."));
            }

            zip = new ZipArchive(file, ZipArchiveMode.Read);
            return new ShowArchive(path, limits ?? ReadLimits.Default, zip);
        }
        catch (Exception fault) when (IsOfArchive(fault))
        {
            zip?.Dispose();
            file?.Dispose();
            return new ShowArchive(
                fault is FileNotFoundException or DirectoryNotFoundException ? DocumentFile.Failed(path, "There is no such file.", "Check the path.")
                : file is null
                    ? DocumentFile.Failed(path, $"The file cannot be opened: {fault.Message.TrimEnd('.')}.", "Check the path and who may read the file.")
                : DocumentFile.Failed(
                    path,
                    "This is no zip archive, or it is cut off or damaged.",
                    "Fetch or pack it again; a show by itself has a name that ends with .show.json."
                )
            );
        }
    }

    /// <summary>
    /// The shows: every <c>*.show.json</c>, in ordinal order of their names, called <c>path!/name</c>. An entry that cannot be read, or has a name that
    /// leads out of the archive or stands there twice, is a document with a problem; so is an archive without shows, and what lies beyond the limits.
    /// </summary>
    public IEnumerable<DocumentFile> Read()
    {
        if (failure is not null)
        {
            yield return failure;
            yield break;
        }

        left = limits.ArchiveBytes;
        for (var i = 0; i < shows.Count; i++)
        {
            if (left <= 0)
            {
                yield return Stopped(shows.Count - i, shows[i].Name);
                yield break;
            }

            var first = i;
            while (i + 1 < shows.Count && shows[i + 1].Name == shows[first].Name)
            {
                i++;
            }

            yield return i == first
                ? Load(shows[i])
                : Failed(
                    shows[i],
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The archive holds {i - first + 1} files of this name, and nobody can tell which of them is meant."
                    ),
                    "Keep one of them."
                );
        }
    }

    /// <inheritdoc/>
    public void Dispose() => zip?.Dispose();

    private DocumentFile Load(ArchiveEntry entry)
    {
        if (entry.Problem is { } problem)
        {
            return Failed(entry, $"The name of the entry {problem}.", "Pack the file anew under a plain name.");
        }

        if (entry.Entry.IsEncrypted)
        {
            return Failed(entry, "The entry is locked with a password.", "Take it out of the archive with its password, and check the file.");
        }

        try
        {
            using var content = entry.Entry.Open();
            var name = DocumentFile.Inside(path, entry.SafeName);
            return Unpack(content) is not { } bytes ? new DocumentFile { Path = name, Problem = DocumentReader.TooLarge(null, limits) }
                : bytes.Length != entry.Entry.Length || Crc32.Of(bytes.Span) != entry.Entry.Crc32 ? Damaged(entry, "")
                : new DocumentFile { Path = name, Utf8 = bytes };
        }
        catch (Exception fault) when (IsOfArchive(fault))
        {
            return Damaged(entry, $": {fault.Message.TrimEnd('.')}");
        }
    }

    /// <summary>What an entry really holds; null when it is more than the limit.</summary>
    private ReadOnlyMemory<byte>? Unpack(Stream content)
    {
        var bytes = new byte[Math.Min(FirstBuffer, limits.Bytes + 1)];
        var length = 0;
        while (content.Read(bytes, length, bytes.Length - length) is > 0 and var read)
        {
            length += read;
            left -= read;
            if (length > limits.Bytes)
            {
                return null;
            }

            if (length == bytes.Length)
            {
                Array.Resize(ref bytes, (int)Math.Min(2L * length, limits.Bytes + 1));
            }
        }

        return bytes.AsMemory(0, length);
    }

    private DocumentFile Damaged(ArchiveEntry entry, string why) =>
        Failed(entry, $"The entry cannot be unpacked, or is not what the archive says about it{why}.", "Fetch or pack the archive again.");

    private DocumentFile Stopped(int count, string first) =>
        DocumentFile.Failed(
            path,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The shows of the archive have more than {limits.ArchiveBytes} bytes together; {count} of them, from '{first}' on, were not read."
            ),
            "Check that it is the right archive; pack the shows into several."
        );

    private static bool IsOfArchive(Exception fault) =>
        fault is InvalidDataException or IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException or OverflowException;

    private DocumentFile Failed(ArchiveEntry entry, string message, string remedy) =>
        DocumentFile.Failed(DocumentFile.Inside(path, entry.SafeName), message, remedy);
}
