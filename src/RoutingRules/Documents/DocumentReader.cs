using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Rules;

namespace RoutingRules.Documents;

/// <summary>Reads any kind of document by its table.</summary>
internal static class DocumentReader
{
    /// <param name="utf8">The text, with or without a byte order mark.</param>
    /// <param name="table">The table of the document.</param>
    /// <param name="version">The format version that the table describes.</param>
    /// <param name="upgraders">What brings older versions up, one step each.</param>
    /// <param name="limits">Bounds; null for the usual ones.</param>
    public static ReadResult<T> Read<T>(ReadOnlySpan<byte> utf8, ObjectTable<T> table, int version, ReadOnlySpan<Upgrader> upgraders, ReadLimits? limits)
        where T : class
    {
        limits ??= ReadLimits.Default;
        var text = Utf8Mark.Skip(utf8);
        if (FindUnreadable(text, limits) is { } unreadable)
        {
            return new ReadResult<T> { Findings = [unreadable] };
        }

        using var session = new ReadSession(limits, version);
        var value = ReadRoot(text, table, session);
        if (session.Problems is not null && DocumentKind.Other(text, table.Shape.Title) is var (title, use))
        {
            return new ReadResult<T> { Findings = [Unreadable($"The document is a {title}, not a {table.Shape.Title}.", use)] };
        }

        return session.OtherVersion is { } found
            ? Upgrade(text, table, found, session.OtherVersionOffset, version, upgraders, limits)
            : new ReadResult<T> { Value = value, Findings = Findings(text, session) };
    }

    /// <summary>A finding about a document that cannot be read at all.</summary>
    public static Finding Unreadable(string message, string remedy, TextPosition? at = null) =>
        Finding(ReadingRules.DocumentUnreadable, message, remedy, "", at);

    private static T? ReadRoot<T>(ReadOnlySpan<byte> text, ObjectTable<T> table, ReadSession session)
        where T : class
    {
        var json = new Utf8JsonReader(text, new JsonReaderOptions { MaxDepth = session.Limits.Depth + session.Limits.ExtensionDepth + 2 });
        try
        {
            json.Read();
            if (json.TokenType != JsonTokenType.StartObject)
            {
                session.Report(
                    ReadingRules.DocumentUnreadable,
                    json.TokenStartIndex,
                    $"the document is not an object; a {table.Shape.Title} begins with a brace"
                );
                return null;
            }

            var good = table.TryRead(ref json, session, out var slot);
            json.Read();
            return good ? table.Load(in slot) : null;
        }
        catch (JsonException exception)
        {
            var fault = JsonFault.Find(text, json.BytesConsumed, json.CurrentDepth == 0 && json.TokenType == JsonTokenType.EndObject, exception);
            session.Report(ReadingRules.DocumentUnreadable, fault.Offset, fault.Message);
            return null;
        }
        catch (ReadStoppedException)
        {
            return null;
        }
    }

    private static Finding? FindUnreadable(ReadOnlySpan<byte> text, ReadLimits limits)
    {
        if (text.Length > limits.Bytes)
        {
            return TooLarge(text.Length, limits);
        }

        if (text.StartsWith("PK\u0003\u0004"u8))
        {
            return Unreadable("The file is a zip archive.", "Take the document out of it, or check the archive under a name that ends with .zip.");
        }

        if (text.Length >= 2 && (text[0] is 0 or 0xFE or 0xFF || text[1] == 0))
        {
            return Unreadable("The file is UTF-16 or UTF-32 text, or no text at all.", "Save the file as UTF-8.");
        }

        if (!Utf8.IsValid(text))
        {
            return Unreadable("The file holds bytes that are not UTF-8.", "Save the file as UTF-8.", new LineCounter(text).At(FirstInvalid(text)));
        }

        return text.Trim(" \t\r\n"u8).IsEmpty
            ? Unreadable("The file is empty.", "Save the document again, or take the file away.", new TextPosition(1, 1))
            : null;
    }

    /// <summary>The finding about a document beyond the size limit.</summary>
    /// <param name="length">Its length in bytes; null when it was not read to the end.</param>
    /// <param name="limits">The limit.</param>
    public static Finding TooLarge(long? length, ReadLimits limits) =>
        Unreadable(
            length is null
                ? string.Create(CultureInfo.InvariantCulture, $"The document is longer than the limit of {limits.Bytes} bytes.")
                : string.Create(CultureInfo.InvariantCulture, $"The file has {length} bytes, more than the limit of {limits.Bytes}."),
            "Check that it is the right file; a show is seldom larger than a megabyte."
        );

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var offset = 0;
        while (offset < text.Length && Rune.DecodeFromUtf8(text[offset..], out _, out var length) == System.Buffers.OperationStatus.Done)
        {
            offset += length;
        }

        return offset;
    }

    private static ReadResult<T> Upgrade<T>(
        ReadOnlySpan<byte> text,
        ObjectTable<T> table,
        long found,
        long offset,
        int version,
        ReadOnlySpan<Upgrader> upgraders,
        ReadLimits limits
    )
        where T : class
    {
        var outcome = UpgradeChain.Run(text, found, version, upgraders);
        if (!outcome.IsCurrent)
        {
            return new ReadResult<T> { Findings = [.. outcome.Steps.Select(Note), Unsupported(text, found, offset, version, outcome, upgraders)] };
        }

        // Lines and columns of the new text would mislead whoever looks at the old one.
        var read = Read(outcome.Utf8, table, version, [], limits);
        return read with { Findings = [.. outcome.Steps.Select(Note), .. read.Findings.Select(finding => finding with { Line = null, Column = null })] };
    }

    private static Finding Note(UpgradeStep step)
    {
        var changes = step.Changes.IsEmpty ? "" : $" Changed: {string.Join("; ", step.Changes)}.";
        return Finding(
            ReadingRules.FormatUpgraded,
            string.Create(CultureInfo.InvariantCulture, $"The document was brought from format version {step.From} to {step.To} while reading.{changes}"),
            ReadingRules.FormatUpgraded.Remedy,
            "/schemaVersion",
            null
        );
    }

    private static Finding Unsupported(
        ReadOnlySpan<byte> text,
        long found,
        long offset,
        int version,
        UpgradeChain.Outcome outcome,
        ReadOnlySpan<Upgrader> upgraders
    )
    {
        var at = new LineCounter(text).At(offset);
        if (outcome.Fault is { } fault)
        {
            return Finding(
                ReadingRules.FormatVersionUnsupported,
                fault,
                "This is a mistake of the library, not of the document; the document is as it was. Please report it with the document.",
                "/schemaVersion",
                at
            );
        }

        var message = string.Create(
            CultureInfo.InvariantCulture,
            $"The document says format version {found}, and this version of the library reads version {version}{Olds(upgraders)}."
        );
        var remedy = found > version ? "Use a newer version of the library." : ReadingRules.FormatVersionUnsupported.Remedy;
        return Finding(ReadingRules.FormatVersionUnsupported, message, remedy, "/schemaVersion", at);
    }

    private static string Olds(ReadOnlySpan<Upgrader> upgraders) =>
        upgraders.IsEmpty ? "" : string.Create(CultureInfo.InvariantCulture, $" and older ones from {upgraders[0].From}");

    private static ValueList<Finding> Findings(ReadOnlySpan<byte> text, ReadSession session)
    {
        if (session.Problems is not { } problems)
        {
            return default;
        }

        var lines = new LineCounter(text);
        var findings = new List<Finding>();
        foreach (var problem in problems.OrderBy(problem => problem.Offset))
        {
            findings.Add(Finding(problem.Rule, problem.Message, problem.Remedy, problem.Pointer, lines.At(problem.Offset)));
        }

        if (session.LeftOut > 0)
        {
            findings.Add(
                Unreadable(
                    string.Create(CultureInfo.InvariantCulture, $"{session.LeftOut} more {(session.LeftOut == 1 ? "problem is" : "problems are")} not listed."),
                    "Mend the listed ones first; they may be of one kind."
                )
            );
        }

        return findings.ToValueList();
    }

    private static Finding Finding(RuleDescriptor rule, string message, string remedy, string pointer, TextPosition? at) =>
        new()
        {
            Rule = rule.Id,
            Name = rule.Name,
            Severity = rule.Severity,
            Message = message,
            Remedy = remedy,
            Entities = [Entity.Of("member", pointer)],
            Pointer = pointer,
            Line = at?.Line,
            Column = at?.Column,
        };
}
