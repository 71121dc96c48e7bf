using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Words;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Checking;

/// <summary>
/// Runs rules on a show whose words may be doubtful: once as written and, where words are, once more as they are probably meant. What is found in both
/// readings does not rest on a word. What only the second finds, or finds graver, nobody can decide until the word is settled, so it is undecided and not
/// passed.
/// </summary>
internal static class TwoReadings
{
    /// <summary>Runs the rules; the observer is told about the first reading only.</summary>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static CheckResult Run(
        ResolvedShow show,
        ProfileLibrary profiles,
        IReadOnlyList<ActiveRule> rules,
        long budget,
        CancellationToken cancellation,
        RuleObserver? observer = null
    )
    {
        var words = ShowWords.Doubtful(show);
        var written = RuleRunner.Run(show, rules, budget, cancellation, observer, words);
        if (words.Count == 0)
        {
            return written;
        }

        var meant = RuleRunner.Run(ShowResolver.Resolve(ShowWords.AsMeant(show), profiles), rules, budget, cancellation);
        return Join(written, meant, words);
    }

    private static CheckResult Join(CheckResult written, CheckResult meant, List<DoubtfulWord> words)
    {
        var known = new KnownFindings(written.Findings);
        var undecided = written.Undecided.ToList();
        var said = undecided.Select(subject => (subject.Rule, subject.Subject)).ToHashSet();
        foreach (var finding in meant.Findings)
        {
            var concerned = words.FindAll(word => finding.Entities.Contains(word.Of));
            concerned = concerned.Count > 0 ? concerned : words;
            if ((known.SeverityOf(finding) is not { } severity || severity < finding.Severity) && said.Add((finding.Rule, concerned[0].Owner)))
            {
                undecided.Add(
                    new UndecidedSubject
                    {
                        Rule = finding.Rule,
                        Subject = concerned[0].Owner,
                        Reason = $"{Doubt(concerned)}, it would find: {finding.Message}",
                    }
                );
            }
        }

        foreach (var subject in meant.Undecided)
        {
            if (said.Add((subject.Rule, subject.Subject)))
            {
                undecided.Add(subject);
            }
        }

        var open = undecided.Select(subject => subject.Rule).ToHashSet(StringComparer.Ordinal);
        return written with
        {
            Undecided = undecided.OrderBy(subject => subject.Rule, StringComparer.Ordinal).ToValueList(),
            Rules = written
                .Rules.Select(rule => rule.Status != RuleStatus.Found && open.Contains(rule.Descriptor.Id) ? rule with { Status = RuleStatus.Undecided } : rule)
                .ToValueList(),
        };
    }

    private static string Doubt(List<DoubtfulWord> words)
    {
        var first = words[0];
        var others = words.Count == 1 ? "" : $", and {Wording.Names(words.ConvertAll(word => $"{word.Name} as '{word.Meant}'")[1..], quoted: false)}";
        return $"The {first.What} '{first.Word}' is no word the rules know. Read as '{first.Meant}'{others}";
    }
}
