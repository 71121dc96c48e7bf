#pragma warning disable RS0030 // A document is a file that somebody named.
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;
using RoutingRules.Rules;

namespace RoutingRules.Documents;

/// <summary>The bytes of a file, or why they could not be had.</summary>
public sealed record DocumentFile
{
    /// <summary>The path as given; of one of several documents in a file, the path of the file, <c>!/</c> and its name or number there.</summary>
    public required string Path { get; init; }

    /// <summary>The text in which lines and columns count, when the document is one of several in it; null when it has a text of its own.</summary>
    public string? TextPath { get; init; }

    /// <summary>Where in that text it begins.</summary>
    public TextPosition Start { get; init; } = new(1, 1);

    /// <summary>The content; empty when <see cref="Problem"/> is set.</summary>
    public ReadOnlyMemory<byte> Utf8 { get; init; }

    /// <summary>Why there is no content: an <c>RR1001</c> finding; null when all is well.</summary>
    public Finding? Problem { get; init; }

    /// <summary>Loads a file whose length is within the limit; a longer one is refused before anything is read.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static DocumentFile Load(string path, ReadLimits? limits = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        limits ??= ReadLimits.Default;
        try
        {
            if (Directory.Exists(path))
            {
                return Failed(path, "This is a folder, not a file.", "Name a file in it.");
            }

            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
            if (file.Length > limits.Bytes)
            {
                return new DocumentFile { Path = path, Problem = DocumentReader.TooLarge(file.Length, limits) };
            }

            var bytes = new byte[file.Length];
            var length = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return new DocumentFile { Path = path, Utf8 = bytes.AsMemory(0, length) };
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            return Failed(path, "There is no such file.", "Check the path.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return Failed(path, $"The file cannot be opened: {fault.Message.TrimEnd('.')}.", "Check the path and who may read the file.");
        }
    }

    /// <summary>Loads what a stream of unknown length still holds; reading stops as soon as the limit is passed.</summary>
    /// <param name="stream">The stream; stays open.</param>
    /// <param name="path">What to call it.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static DocumentFile Load(Stream stream, string path, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentException.ThrowIfNullOrEmpty(path);
        limits ??= ReadLimits.Default;
        try
        {
            var bytes = new byte[Math.Min(FirstBuffer, limits.Bytes + 1)];
            var length = 0;
            while (stream.Read(bytes, length, bytes.Length - length) is > 0 and var read)
            {
                length += read;
                if (length > limits.Bytes)
                {
                    return new DocumentFile { Path = path, Problem = DocumentReader.TooLarge(null, limits) };
                }

                if (length == bytes.Length)
                {
                    Array.Resize(ref bytes, (int)Math.Min(2L * length, limits.Bytes + 1));
                }
            }

            return new DocumentFile { Path = path, Utf8 = bytes.AsMemory(0, length) };
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return Failed(path, $"Reading failed: {fault.Message.TrimEnd('.')}.", "Check what sends the document.");
        }
    }

    private const int FirstBuffer = 64 * 1024;

    /// <summary>What a document inside a file is called.</summary>
    internal static string Inside(string file, string name) => $"{file}!/{name}";

    internal static DocumentFile Failed(string path, string message, string remedy) =>
        new() { Path = path, Problem = DocumentReader.Unreadable(message, remedy) };
}
