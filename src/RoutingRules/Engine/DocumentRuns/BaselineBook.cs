using RoutingRules.Checking.Catalogue;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>Compares checked documents with a baseline and works out what the baseline becomes. Not thread safe.</summary>
/// <remarks>Waivers are applied first: what is waived is no debt any more and leaves the baseline when it is updated.</remarks>
public sealed class BaselineBook
{
    private readonly Baseline baseline;
    private readonly bool acceptsAll;
    private readonly SortedDictionary<string, BaselineDocument> documents = new(StringComparer.Ordinal);

    /// <summary>Opens a book.</summary>
    /// <param name="baseline">The baseline, without problems.</param>
    /// <param name="acceptsAll">True to count every finding as known from now on, except those of reading.</param>
    /// <exception cref="ArgumentNullException"><paramref name="baseline"/> is null.</exception>
    /// <exception cref="ArgumentException"><see cref="WaiverCheck.Problems(Baseline)"/> has something to say about the baseline.</exception>
    public BaselineBook(Baseline baseline, bool acceptsAll = false)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        if (WaiverCheck.Problems(baseline) is { IsEmpty: false } problems)
        {
            throw new ArgumentException(problems[0].Message, nameof(baseline));
        }

        this.baseline = baseline;
        this.acceptsAll = acceptsAll;
        foreach (var document in baseline.Documents)
        {
            documents.Add(document.Path, document);
        }
    }

    /// <summary>Whether the baseline, as it was given, knows a finding.</summary>
    /// <param name="finding">The finding, one of a check of the whole document.</param>
    /// <param name="path">The path of its document with <c>/</c>, relative to the folder of the baseline.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public bool Knows(Finding finding, string path)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(path);
        foreach (var document in baseline.Documents)
        {
            if (document.Path == path)
            {
                var fingerprint = finding.Fingerprint();
                return document.Findings.Any(known => known.Rule == finding.Rule && known.Fingerprint == fingerprint)
                    && !StandingRules.All.Any(rule => rule.Id == finding.Rule);
            }
        }

        return false;
    }

    /// <summary>The document with those findings set apart that the baseline knows, and with those named that it no longer shows.</summary>
    /// <param name="document">The document as checked, waivers applied.</param>
    /// <param name="path">Its path with <c>/</c>, relative to the folder of the baseline.</param>
    public DocumentCheck Apply(DocumentCheck document, string path)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(path);
        var known = new SortedDictionary<string, BaselineFinding>(StringComparer.Ordinal);
        foreach (var finding in documents.TryGetValue(path, out var before) ? before.Findings : default)
        {
            known.Add(Key(finding.Rule, finding.Fingerprint), finding);
        }

        var open = new List<Finding>();
        var excused = new List<Finding>();
        var left = new SortedDictionary<string, BaselineFinding>(known, StringComparer.Ordinal);
        var kept = new SortedDictionary<string, BaselineFinding>(StringComparer.Ordinal);
        foreach (var finding in document.Result.Findings)
        {
            var identity = new BaselineFinding
            {
                Rule = finding.Rule,
                Fingerprint = finding.Fingerprint(),
                Entities = finding.Entities,
            };
            var key = Key(identity.Rule, identity.Fingerprint);
            left.Remove(key);
            var isKnown = document.Result.WasRead && IsDebt(document.Result, finding) && (acceptsAll || known.ContainsKey(key));
            (isKnown ? excused : open).Add(finding);
            if (isKnown)
            {
                kept[key] = identity;
            }
        }

        foreach (var waived in document.Waived)
        {
            left.Remove(Key(waived.Finding.Rule, waived.Finding.Fingerprint()));
        }

        var gone = new List<BaselineFinding>();
        foreach (var (key, finding) in left)
        {
            if (Judgement.IsDecided(document.Result, finding.Rule))
            {
                gone.Add(finding);
            }
            else
            {
                kept.Add(key, finding);
            }
        }

        if (kept.Count == 0)
        {
            // Of a clean document nothing is to be kept, however many of them there are.
            documents.Remove(path);
        }
        else
        {
            documents[path] = new BaselineDocument { Path = path, Findings = kept.Values.ToValueList() };
        }

        return document with
        {
            Result = document.Result with { Findings = open.ToValueList() },
            Known = excused.ToValueList(),
            Gone = gone.ToValueList(),
            IsCompared = true,
        };
    }

    /// <summary>
    /// The baseline without what is gone or waived by now and, when all is accepted, with what is new. Documents that were not applied stay as they are.
    /// </summary>
    public Baseline Updated() => baseline with { Documents = documents.Values.Where(document => !document.Findings.IsEmpty).ToValueList() };

    private static string Key(string rule, string fingerprint) => $"{rule} {fingerprint}";

    private static bool IsDebt(CheckResult result, Finding finding) =>
        result.Rules.Any(outcome => outcome.Descriptor.Id == finding.Rule && !WaiverCheck.IsFixed(outcome.Descriptor));
}
