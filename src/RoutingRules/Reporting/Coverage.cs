using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reporting;

/// <summary>What a run looked at and what not: how each rule ended, and which rules never ran.</summary>
internal sealed class Coverage(ValueList<RuleDescriptor> catalogue)
{
    private readonly SortedDictionary<string, RuleCoverage> rules = new(StringComparer.Ordinal);

    /// <summary>The rules that ran, by id.</summary>
    public IReadOnlyCollection<RuleCoverage> Rules => rules.Values;

    /// <summary>Rules of the catalogue that a configuration kept from running, by id; none before a document was added. Rules that always count never are.</summary>
    public IEnumerable<RuleDescriptor> SwitchedOff =>
        rules.Count == 0 ? [] : catalogue.Where(rule => !rules.ContainsKey(rule.Id) && !Waivers.WaiverCheck.IsFixed(rule));

    public void Add(CheckResult result)
    {
        foreach (var outcome in result.Rules)
        {
            if (!rules.TryGetValue(outcome.Descriptor.Id, out var rule))
            {
                rules.Add(outcome.Descriptor.Id, rule = new RuleCoverage(outcome.Descriptor));
            }

            rule.Found += outcome.Status == RuleStatus.Found ? 1 : 0;
            rule.Passed += outcome.Status == RuleStatus.Passed ? 1 : 0;
            rule.NotApplicable += outcome.Status == RuleStatus.NotApplicable ? 1 : 0;
            rule.Undecided += outcome.Status == RuleStatus.Undecided || result.Undecided.Any(subject => subject.Rule == outcome.Descriptor.Id) ? 1 : 0;
        }
    }

    /// <summary>Sentences for people: how the rules ended, then those that could not look or decide anywhere or somewhere.</summary>
    public IEnumerable<string> Sentences()
    {
        var count = PlainText.Count(rules.Count, "rule");
        yield return FormattableString.Invariant(
            $"{count} looked: {Number(rule => rule.Found > 0)} found something, {Number(rule => IsQuiet(rule) && rule.Passed > 0)} passed, {Number(IsIdle)} had nothing to look at, {Number(rule => rule.Undecided > 0)} could not decide everywhere.");
        foreach (var (title, names) in new[]
        {
            ("Nothing to look at", Names(rules.Values.Where(IsIdle).Select(rule => rule.Rule))),
            ("Not decided everywhere", Names(rules.Values.Where(rule => rule.Undecided > 0).Select(rule => rule.Rule))),
            ("Switched off", Names(SwitchedOff)),
        })
        {
            if (names.Length > 0)
            {
                yield return $"{title}: {names}.";
            }
        }
    }

    private static bool IsQuiet(RuleCoverage rule) => rule.Found == 0 && rule.Undecided == 0;

    private static bool IsIdle(RuleCoverage rule) => IsQuiet(rule) && rule.Passed == 0;

    private int Number(Func<RuleCoverage, bool> which) => rules.Values.Count(which);

    private static string Names(IEnumerable<RuleDescriptor> rules) => string.Join(", ", rules.Select(rule => $"{rule.Id} {rule.Name}"));
}
