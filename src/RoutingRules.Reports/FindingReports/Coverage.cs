using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>What a run looked at and what not: how each rule ended, and which rules never ran.</summary>
internal sealed class Coverage(ValueList<RuleDescriptor> catalogue)
{
    // A small show has nothing for most rules; their names would bury what was found. JSON has them all.
    private const int MaxIdleNamed = 12;

    private readonly SortedDictionary<string, RuleCoverage> rules = new(StringComparer.Ordinal);
    private int unreadable;

    /// <summary>The rules that ran, by id.</summary>
    public IReadOnlyCollection<RuleCoverage> Rules => rules.Values;

    /// <summary>
    /// Rules of the catalogue that a configuration kept from running, by id; none before a document was added. Rules that always count never are.
    /// </summary>
    public IEnumerable<RuleDescriptor> SwitchedOff =>
        rules.Count == 0 ? [] : catalogue.Where(rule => !rules.ContainsKey(rule.Id) && !Engine.DocumentRuns.WaiverCheck.IsFixed(rule));

    public void Add(CheckResult result)
    {
        unreadable += result.WasRead ? 0 : 1;
        foreach (var outcome in result.Rules)
        {
            if (!rules.TryGetValue(outcome.Descriptor.Id, out var rule))
            {
                rules.Add(outcome.Descriptor.Id, rule = new RuleCoverage(outcome.Descriptor));
            }

            var isUndecided = outcome.Status == RuleStatus.Undecided || result.Undecided.Any(subject => subject.Rule == outcome.Descriptor.Id);
            rule.Found += outcome.Status == RuleStatus.Found ? 1 : 0;
            rule.Passed += outcome.Status == RuleStatus.Passed ? 1 : 0;
            rule.NotApplicable += outcome.Status == RuleStatus.NotApplicable ? 1 : 0;
            rule.Undecided += isUndecided ? 1 : 0;
            rule.NotRun += isUndecided && !result.WasRead ? 1 : 0;
        }
    }

    /// <summary>Sentences for people: how the rules ended, then those that could not look or decide anywhere or somewhere.</summary>
    /// <remarks>
    /// Rules that did not run because a document could not be read are counted, not named: they are nearly all, and the document is what to mend.
    /// </remarks>
    public IEnumerable<string> Sentences()
    {
        var count = PlainText.Count(Number(HasRun), "rule");
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"{count} looked: {Number(rule => rule.Found > 0)} found something, {Number(rule => IsQuiet(rule) && rule.Passed > 0)} passed, "
                + $"{Number(IsIdle)} had nothing to look at, {Number(IsUndecided)} could not decide everywhere."
        );
        if (unreadable > 0)
        {
            var notRun = PlainText.Count(Number(rule => rule.NotRun > 0), "rule");
            yield return $"{notRun} did not run on {PlainText.Count(unreadable, "document")} that could not be read in full.";
        }

        foreach (
            var (title, names) in new[]
            {
                ("Nothing to look at", Number(IsIdle) > MaxIdleNamed ? "" : Names(rules.Values.Where(IsIdle).Select(rule => rule.Rule))),
                ("Not decided everywhere", Names(rules.Values.Where(IsUndecided).Select(rule => rule.Rule))),
                ("Switched off", Names(SwitchedOff)),
            }
        )
        {
            if (names.Length > 0)
            {
                yield return $"{title}: {names}.";
            }
        }
    }

    private static bool HasRun(RuleCoverage rule) => rule.Found + rule.Passed + rule.NotApplicable > 0 || IsUndecided(rule);

    private static bool IsUndecided(RuleCoverage rule) => rule.Undecided > rule.NotRun;

    private static bool IsQuiet(RuleCoverage rule) => rule.Found == 0 && !IsUndecided(rule);

    private static bool IsIdle(RuleCoverage rule) => IsQuiet(rule) && rule.Passed == 0 && rule.NotApplicable > 0;

    private int Number(Func<RuleCoverage, bool> which) => rules.Values.Count(which);

    private static string Names(IEnumerable<RuleDescriptor> rules) => string.Join(", ", rules.Select(rule => $"{rule.Id} {rule.Name}"));
}
