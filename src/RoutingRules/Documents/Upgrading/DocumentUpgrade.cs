using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;
using RoutingRules.Model;

namespace RoutingRules.Documents.Upgrading;

/// <summary>Brings documents to the present format version, keeping their text as far as the versions agree.</summary>
public static class DocumentUpgrade
{
    /// <summary>The present version of every kind of document.</summary>
    public const int Version = ShowTable.Version;

    private static readonly Upgrader[] ShowUpgraders = [new ShowVersionZero()];

    /// <summary>The kinds that can be upgraded or told to be in the present version.</summary>
    public static ValueList<SchemaKind> Kinds { get; } = [SchemaKind.Show, SchemaKind.Run, SchemaKind.Config, SchemaKind.Waivers, SchemaKind.Baseline];

    /// <summary>The oldest version of a kind that is still read.</summary>
    public static int OldestOf(SchemaKind kind)
    {
        var oldest = Version;
        foreach (var upgrader in UpgradersOf(kind))
        {
            oldest = Math.Min(oldest, upgrader.From);
        }

        return oldest;
    }

    /// <summary>Brings a document to the present version and reads it there. Never throws for what it holds.</summary>
    /// <param name="kind">What it is, one of <see cref="Kinds"/>.</param>
    /// <param name="utf8Json">The text, with or without a byte order mark; a mark stays.</param>
    /// <exception cref="ArgumentOutOfRangeException">Documents of <paramref name="kind"/> are not read.</exception>
    public static UpgradeResult Run(SchemaKind kind, ReadOnlyMemory<byte> utf8Json) =>
        kind switch
        {
            SchemaKind.Show => Run(utf8Json, UpgradersOf(kind), ShowTable.Show),
            SchemaKind.Run => Run(utf8Json, UpgradersOf(kind), RunningOrderTable.Run),
            SchemaKind.Config => Run(utf8Json, UpgradersOf(kind), ConfigTable.Config),
            SchemaKind.Waivers => Run(utf8Json, UpgradersOf(kind), WaiverTables.Waivers),
            SchemaKind.Baseline => Run(utf8Json, UpgradersOf(kind), WaiverTables.Baseline),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Documents of this kind are written, not read, or carry no format version."),
        };

    /// <summary>The show's text in the present version; the text itself when it is, or when it cannot be brought there.</summary>
    public static ReadOnlyMemory<byte> ShowText(ReadOnlyMemory<byte> utf8Json) =>
        Run(SchemaKind.Show, utf8Json) is { Steps.IsEmpty: false, IsUsable: true } result ? result.Utf8 : utf8Json;

    internal static ReadOnlySpan<Upgrader> UpgradersOf(SchemaKind kind) => kind == SchemaKind.Show ? ShowUpgraders : [];

    internal static UpgradeResult Run<T>(ReadOnlyMemory<byte> utf8Json, ReadOnlySpan<Upgrader> upgraders, Tables.ObjectTable<T> table)
        where T : class
    {
        var read = DocumentReader.Read(utf8Json.Span, table, Version, upgraders, null);
        var isMarked = Utf8Mark.Length(utf8Json.Span) > 0;
        var text = Utf8Mark.Skip(utf8Json.Span);
        var isOld = read.Findings.Any(finding => finding.Rule == ReadingRules.FormatUpgraded.Id);
        if (!isOld || UpgradeChain.VersionOf(text) is not { } found)
        {
            return new UpgradeResult
            {
                Utf8 = utf8Json,
                Findings = read.Findings,
                IsUsable = read.IsUsable,
            };
        }

        var outcome = UpgradeChain.Run(text, found, Version, upgraders);
        return new UpgradeResult
        {
            Utf8 =
                !outcome.IsCurrent ? utf8Json
                : isMarked ? (byte[])[.. Utf8Mark.Bytes, .. outcome.Utf8]
                : outcome.Utf8,
            Steps = outcome.IsCurrent ? outcome.Steps : default,
            Findings = read.Findings.Where(finding => finding.Rule != ReadingRules.FormatUpgraded.Id).ToValueList(),
            IsUsable = read.IsUsable,
        };
    }
}
