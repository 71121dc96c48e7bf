using System.Security.Cryptography;
using RoutingRules.Checking;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>Mends a show fix by fix, in the order of the findings, in passes until a pass takes none.</summary>
internal sealed class Fixer
{
    private readonly Checker checker;
    private readonly IReadOnlyList<FixProvider> providers;
    private readonly FixOptions options;
    private readonly CancellationToken cancellation;
    private readonly List<AppliedFix> applied = [];
    private readonly List<string> hashes = [];
    private FixState state;
    private List<RefusedFix> refused = [];
    private ValueList<string> circle;
    private int trials;
    private bool isStopped;

    private Fixer(Checker checker, IReadOnlyList<FixProvider> providers, FixState state, FixOptions options, CancellationToken cancellation)
    {
        this.state = state;
        hashes.Add(Hash(state.Show.Document));
        this.checker = checker;
        this.providers = providers;
        this.options = options;
        this.cancellation = cancellation;
    }

    public static FixResult Run(Checker checker, IReadOnlyList<FixProvider> providers, Show show, FixOptions options, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.MaxTrials, 1, nameof(options));
        var resolved = checker.Resolve(show);
        var before = checker.Check(resolved, cancellation);
        var fixer = new Fixer(checker, providers, new FixState(resolved, before), options, cancellation);
        while (fixer.Pass()) { }

        return new FixResult
        {
            Show = fixer.state.Show.Document,
            Before = before,
            After = fixer.state.Check,
            Applied = fixer.applied.ToValueList(),
            Refused = fixer.refused.ToValueList(),
            Circle = fixer.circle,
            IsStopped = fixer.isStopped,
        };
    }

    public static ValueList<Fix> Offer(
        Checker checker,
        IReadOnlyList<FixProvider> providers,
        ResolvedShow show,
        CheckResult check,
        Finding finding,
        CancellationToken cancellation
    )
    {
        var state = new FixState(show, check);
        var offered = new List<Fix>();
        foreach (var fix in Proposals(providers, state, finding, null))
        {
            if (fix.Safety == FixSafety.Manual)
            {
                offered.Add(fix);
                continue;
            }

            var trial = Trial.Run(checker, state, finding, fix, cancellation);
            if (trial.Against is null)
            {
                offered.Add(trial.AgainstSafe is null ? fix : fix with { Safety = FixSafety.Unsafe });
            }
        }

        return offered.OrderByDescending(fix => fix.Safety).ToValueList();
    }

    /// <summary>Tries each finding once; true when another pass may find more.</summary>
    private bool Pass()
    {
        var tried = new HashSet<string>(StringComparer.Ordinal);
        var took = false;
        refused = [];
        for (var i = 0; i < state.Check.Findings.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var finding = state.Check.Findings[i];
            if (!IsWanted(finding) || !tried.Add(finding.Fingerprint()))
            {
                continue;
            }

            if (TryFinding(finding))
            {
                took = true;
                i = -1;
            }

            if (!circle.IsEmpty || isStopped)
            {
                return false;
            }
        }

        return took;
    }

    private bool TryFinding(Finding finding)
    {
        foreach (var fix in Proposals(providers, state, finding, refused))
        {
            if (fix.Safety == FixSafety.Manual || (fix.Safety == FixSafety.Unsafe && !options.IncludeUnsafe))
            {
                continue;
            }

            if (++trials > options.MaxTrials)
            {
                isStopped = true;
                return false;
            }

            var trial = Trial.Run(checker, state, finding, fix, cancellation);
            var isSafe = fix.Safety == FixSafety.Safe && trial.AgainstSafe is null;
            if ((options.IncludeUnsafe ? trial.Against : trial.AgainstSafe) is { } reason)
            {
                refused.Add(
                    new RefusedFix
                    {
                        Finding = finding,
                        Title = fix.Title,
                        Reason = reason,
                    }
                );
                continue;
            }

            var hash = Hash(trial.State!.Show.Document);
            if (hashes.IndexOf(hash) is var seen and >= 0)
            {
                GoBack(seen, trial.State, finding, fix);
                return false;
            }

            applied.Add(
                new AppliedFix
                {
                    Finding = finding,
                    Fix = isSafe ? fix : fix with { Safety = FixSafety.Unsafe },
                    Moves = trial.Moves,
                }
            );
            state = trial.State;
            hashes.Add(hash);
            return true;
        }

        return false;
    }

    /// <summary>The state was there before: back to it, so that mending once more ends in the same place.</summary>
    private void GoBack(int seen, FixState then, Finding finding, Fix fix)
    {
        circle = applied.Skip(seen).Select(step => step.Finding.Rule).Append(finding.Rule).Distinct().Order(StringComparer.Ordinal).ToValueList();
        refused.Add(
            new RefusedFix
            {
                Finding = finding,
                Title = fix.Title,
                Reason = $"the show would be as it was before; fixes of {string.Join(", ", circle)} undo one another",
            }
        );
        applied.RemoveRange(seen, applied.Count - seen);
        state = then;
        hashes.RemoveRange(seen + 1, hashes.Count - seen - 1);
    }

    private bool IsWanted(Finding finding) =>
        options.Rules.IsEmpty ? options.IsAccepted?.Invoke(finding) != true : options.Rules.Contains(finding.Rule) || options.Rules.Contains(finding.Name);

    private static List<Fix> Proposals(IReadOnlyList<FixProvider> providers, FixState state, Finding finding, List<RefusedFix>? faults)
    {
        var found = new List<Fix>();
        var context = new FixContext(state.Show);
        foreach (var provider in providers)
        {
            if (provider.RuleId != finding.Rule)
            {
                continue;
            }

            try
            {
                found.AddRange(provider.Propose(context, finding));
            }
            catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
            {
                faults?.Add(
                    new RefusedFix
                    {
                        Finding = finding,
                        Title = "No fix",
                        Reason = $"looking for fixes failed: {fault.GetType().Name}: {fault.Message}",
                    }
                );
            }
        }

        return found;
    }

    private static string Hash(Show show) => Convert.ToHexString(SHA256.HashData(ShowWriter.Text(show)));
}
