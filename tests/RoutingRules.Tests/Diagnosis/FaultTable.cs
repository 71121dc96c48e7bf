using System.Globalization;
using System.Text;
using RoutingRules.Model;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Plants faults by kind and counts how many are told as one cause and mended.</summary>
internal sealed class FaultTable
{
    private readonly SortedDictionary<string, Row> rows = new(StringComparer.Ordinal);

    public static IReadOnlyList<Fault> Kinds { get; } = [.. RouteFaults.All, .. StreamFaults.All, .. RigFaults.All];

    /// <summary>Slips that change nothing anybody could hear and of which no rule says more than a note: they are none, and are not in the count.</summary>
    public int Inaudible { get; private set; }

    public int Planted => rows.Values.Sum(row => row.Planted);

    public double One => (double)rows.Values.Sum(row => row.One) / Planted;

    public double Restored => (double)rows.Values.Sum(row => row.Restored) / Planted;

    /// <summary>The share told as one cause of those about which a rule says more than a note.</summary>
    public double OneOfHeard => (double)rows.Values.Sum(row => row.One) / (Planted - rows.Values.Sum(row => row.Silent));

    /// <summary>The share mended of those about which a rule says more than a note.</summary>
    public double RestoredOfHeard => (double)rows.Values.Sum(row => row.Restored) / (Planted - rows.Values.Sum(row => row.Silent));

    /// <summary>Work of all diagnoses against that of all checks.</summary>
    public double Work => (double)rows.Values.Sum(row => row.Work) / rows.Values.Sum(row => row.CheckWork);

    public IEnumerable<string> Planters => rows.Keys;

    /// <summary>Plants so many faults of each kind in clean shows.</summary>
    /// <param name="shows">The clean shows.</param>
    /// <param name="seed">Where the lot begin.</param>
    /// <param name="each">How many of each kind.</param>
    /// <param name="told">Gets a line for every fault that is not told as one cause and mended; null for nobody.</param>
    public static FaultTable Single(IReadOnlyList<Show> shows, int seed, int each, Action<string>? told = null)
    {
        var table = new FaultTable();
        foreach (var fault in Kinds)
        {
            for (var n = 0; n < each; n++)
            {
                var at = (seed * 1000) + n;
                var lot = new Lot(at);
                var clean = shows[n % shows.Count];
                if (fault.Plant(clean, lot) is not { } faulty || faulty.Equals(clean))
                {
                    continue;
                }

                if (Diagnosis.Planted.Of(clean, faulty) is not { } planted)
                {
                    table.Inaudible++;
                }
                else
                {
                    table.Count(fault.Kind, planted, 1, told is null ? null : text => told($"{fault.Kind} [{n}] {text}"));
                }
            }
        }

        return table;
    }

    /// <summary>Plants two faults of random kinds at once, so many times, the first of which a rule tells when it stands alone.</summary>
    public static FaultTable Double(IReadOnlyList<Show> shows, int seed, int count, Action<string>? told = null)
    {
        var table = new FaultTable();
        for (var n = 0; n < count; n++)
        {
            var lot = new Lot((seed * 1000) + n);
            var clean = shows[n % shows.Count];
            var (one, other) = (lot.Pick(Kinds), lot.Pick(Kinds));
            if (
                one.Plant(clean, lot) is { } first
                && Diagnosis.Planted.Of(clean, first) is { IsSilent: false }
                && Diagnosis.Planted.Of(clean, other.Plant(clean, new Lot((seed * 1000) + n))) is not { IsSilent: true }
                && other.Plant(first, lot) is { } both
                && Diagnosis.Planted.Of(first, both) is not null
                && Diagnosis.Planted.Of(clean, both) is { } planted
            )
            {
                table.Count("two faults", planted, 2, told is null ? null : text => told($"{one.Kind} + {other.Kind} [{n}] {text}"));
            }
        }

        return table;
    }

    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine("| kind | planted | told as one | mended | silent | work |").AppendLine("|---|---|---|---|---|---|");
        foreach (var (kind, row) in rows)
        {
            text.AppendLine(
                CultureInfo.InvariantCulture,
                $"| {kind} | {row.Planted} | {row.One} | {row.Restored} | {row.Silent} | {(double)row.Work / Math.Max(1, row.CheckWork):0.0} |"
            );
        }

        return text.AppendLine(
                CultureInfo.InvariantCulture,
                $"| all | {Planted} | {One:P1} | {Restored:P1} | {rows.Values.Sum(row => row.Silent)} | {Work:0.0} |"
            )
            .AppendLine(CultureInfo.InvariantCulture, $"| of those that a rule tells | | {OneOfHeard:P1} | {RestoredOfHeard:P1} | | |")
            .AppendLine(CultureInfo.InvariantCulture, $"| not counted: nothing sounds otherwise, no rule speaks | {Inaudible} | | | | |")
            .ToString();
    }

    private void Count(string kind, Planted planted, int most, Action<string>? told)
    {
        if (!rows.TryGetValue(kind, out var row))
        {
            rows.Add(kind, row = new Row());
        }

        row.Planted++;
        row.Work += planted.Work;
        row.CheckWork += planted.CheckWork;
        row.Silent += planted.IsSilent ? 1 : 0;
        var isTold = planted.Causes.Count >= 1 && planted.Causes.Count <= most;
        var isRestored = planted.IsRestored || (planted.Causes is [{ Repair.Title: "Run assign" }]);
        row.One += isTold ? 1 : 0;
        row.Restored += isRestored ? 1 : 0;
        if (told is not null && (!isTold || !isRestored))
        {
            var causes = planted.Causes.Select(cause => $"\n    cause {cause.Title} | {cause.Repair.Title} [{cause.Confidence}]");
            var findings = planted.Check.Findings.Take(6).Select(finding => $"\n    {finding.Rule} {finding.Severity} {finding.Message}");
            var heard = planted.IsSilent ? planted.Differences().Take(6).Select(line => $"\n    {line}") : [];
            told($"{planted.Clean.Title}: told {planted.Causes.Count}, mended {isRestored}{string.Concat([.. causes, .. findings, .. heard])}");
        }
    }

    private sealed class Row
    {
        public int Planted { get; set; }

        public int One { get; set; }

        public int Restored { get; set; }

        public int Silent { get; set; }

        public long Work { get; set; }

        public long CheckWork { get; set; }
    }
}
