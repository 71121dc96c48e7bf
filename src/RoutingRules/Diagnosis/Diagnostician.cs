using RoutingRules.Checking;
using RoutingRules.Diagnosis.Candidates;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis;

/// <summary>Finds the smallest set of repairs that makes the findings of a show go away, each applied, traced and checked before it is named.</summary>
internal sealed class Diagnostician
{
    /// <summary>A show with more slips than this has to be patched anew rather than mended.</summary>
    private const int MostCauses = 20;

    /// <summary>How many repairs are applied and checked for one show.</summary>
    private const int MostTrials = 40;

    /// <summary>How many repairs are compared by what the rules say afterwards, unless one leaves nothing to say.</summary>
    private const int Compared = 5;

    /// <summary>After this many trials a show has so many slips that only repairs of nearly the same rank are compared.</summary>
    private const int ManyTrials = 12;
    private const int NearRank = 2;

    private readonly Checker checker;
    private readonly IReadOnlyList<FixProvider> providers;
    private readonly CancellationToken cancellation;
    private readonly FixState first;
    private readonly List<Cause> causes = [];
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);
    private FixState state;
    private int trials;
    private bool isCapped;

    private Diagnostician(Checker checker, IReadOnlyList<FixProvider> providers, FixState state, CancellationToken cancellation)
    {
        this.checker = checker;
        this.providers = providers;
        this.cancellation = cancellation;
        this.state = state;
        first = state;
    }

    /// <summary>The causes, those that explain most first; nothing is looked for where nothing is graver than a note.</summary>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Diagnosed Run(Checker checker, IReadOnlyList<FixProvider> providers, ResolvedShow show, CheckResult check, CancellationToken cancellation)
    {
        if (!check.WasRead || check.Worst is null or Severity.Note)
        {
            return new Diagnosed(default, 0);
        }

        var run = new Diagnostician(checker, providers, new FixState(show, check), cancellation);
        if (Unpatched.Of(run.first) is { } unpatched)
        {
            return new Diagnosed([unpatched], 0);
        }

        while (run.causes.Count < MostCauses && run.Delivery()) { }

        while (run.causes.Count < MostCauses && run.Others()) { }

        var causes = run.isCapped ? run.causes.ConvertAll(cause => cause with { Confidence = CauseConfidence.Partial }) : run.causes;
        return new Diagnosed(causes.ToValueList(), run.Work);
    }

    private long Work { get; set; }

    /// <summary>Takes the best repair of what does not arrive; false when there is none.</summary>
    private bool Delivery()
    {
        if (state.Check.Worst is null or Severity.Note)
        {
            return false;
        }

        var search = new CandidateSearch(state.Show);
        search.Run();
        Work += search.Work;
        isCapped |= search.IsCapped;
        for (var i = 0; i < search.Found.Count && trials < MostTrials; i += Compared)
        {
            if (Take(search.Found[i..Math.Min(i + Compared, search.Found.Count)]))
            {
                return true;
            }
        }

        isCapped |= search.Found.Count > 0;
        return false;
    }

    /// <summary>Tries candidates and takes the one after which least is found.</summary>
    private bool Take(List<RepairCandidate> candidates)
    {
        var tried = new List<(RepairCandidate Candidate, RepairTrial Trial)>();
        foreach (var candidate in candidates)
        {
            if (tried.Count > 0 && IsSettled(tried, candidate))
            {
                break;
            }

            if (Try(candidate.Change.Edits(state.Show.Document)) is { } trial)
            {
                tried.Add((candidate, trial));
            }
        }

        if (tried.Count == 0)
        {
            return false;
        }

        var (best, done) = tried.MinBy(one => (one.Trial.Weight, one.Candidate.Rank));
        var ties = tried.FindAll(one =>
            one.Candidate != best && one.Trial.Weight == done.Weight && one.Candidate.Rank == best.Rank && one.Candidate.Solved.SequenceEqual(best.Solved)
        );
        var words = new CauseWords(state.Show);
        var repairs = ties.Select(one => FixOf(words, one.Candidate)).Prepend(FixOf(words, best)).ToList();
        var title = words.Title(best);
        if (best.Solved.TrueForAll(want => want.IsLikely) && Otherwise(done) is var (isLabel, other, otherwise))
        {
            // Only a label or a setting says that the patch is wrong, so it may be wrong itself: who looks at the rig decides, and labels hurt nobody.
            repairs.Insert(isLabel ? 0 : 1, other.Fix);
            title = isLabel ? $"{other.Title}, or {title}" : $"{title}, or {char.ToLowerInvariant(other.Title[0])}{other.Title[1..]}";
            done = isLabel ? otherwise : done;
        }

        causes.Add(
            new Cause
            {
                Title = title,
                Repair = repairs[0],
                Alternatives = repairs.Skip(1).ToValueList(),
                Findings = Explained(done),
                Confidence = repairs.Count > 1 ? CauseConfidence.Tie : CauseConfidence.Only,
                Places = words.Places(best),
            }
        );
        state = done.After;
        return true;
    }

    /// <summary>One exchange of labels, or one setting, that leaves no more than a repair of the patch does; null when there is none.</summary>
    private (bool IsLabel, OtherRepair Repair, RepairTrial Trial)? Otherwise(RepairTrial done)
    {
        foreach (var finding in done.Gone.Where(finding => finding.Severity > Severity.Note))
        {
            var isLabel = LabelSwaps.Concerns(finding);
            foreach (var other in isLabel ? LabelSwaps.For(state.Show, finding) : OtherRepairs.For(state, providers, finding))
            {
                if (Try(other.Fix.Edits) is { } trial && trial.Weight <= done.Weight)
                {
                    return (isLabel, other with { Fix = OnFirst(other, finding) }, trial);
                }
            }
        }

        return null;
    }

    /// <summary>True when a candidate need not be compared: one of a better rank left nothing to say, or there is too much to compare.</summary>
    private bool IsSettled(List<(RepairCandidate Candidate, RepairTrial Trial)> tried, RepairCandidate candidate) =>
        tried.Exists(one => one.Trial.IsClean && one.Candidate.Rank < candidate.Rank)
        || (trials > ManyTrials && (candidate.Solved.Count < tried[0].Candidate.Solved.Count || candidate.Rank > tried[0].Candidate.Rank + NearRank));

    private Fix FixOf(CauseWords words, RepairCandidate candidate)
    {
        var title = words.Repair(candidate);
        var edits = candidate.Change.On(state.Show.Document, first.Show.Document)?.Edits(first.Show.Document);
        return edits is null
            ? Fix.Manual(title, "Mend the causes before this one first, then check again")
            : Fix.Of(title, FixSafety.Unsafe, edits.Value, CauseWords.Caution);
    }

    private RepairTrial? Try(ValueList<ShowEdit> edits)
    {
        cancellation.ThrowIfCancellationRequested();
        if (edits.IsEmpty || ++trials > MostTrials)
        {
            isCapped |= trials > MostTrials;
            return null;
        }

        var trial = RepairTrial.Run(checker, state, edits, cancellation);
        Work += trial?.After.Check.Rules.Sum(rule => rule.WorkUnits) ?? 0;
        return trial;
    }

    /// <summary>The fingerprints of findings of the show as it stood that a repair took away.</summary>
    private ValueList<string> Explained(RepairTrial trial)
    {
        var gone = trial.Gone.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal);
        return first.Check.Findings.Select(finding => finding.Fingerprint()).Where(gone.Contains).ToValueList();
    }

    /// <summary>Takes the best repair of the gravest finding that is left; false when there is none.</summary>
    private bool Others()
    {
        foreach (var finding in state.Check.Findings.Where(finding => finding.Severity > Severity.Note).OrderByDescending(finding => finding.Severity).ToList())
        {
            if (!asked.Add(finding.Fingerprint()))
            {
                continue;
            }

            (OtherRepair Proposal, RepairTrial Trial)? best = null;
            var ties = new List<OtherRepair>();
            foreach (var proposal in OtherRepairs.For(state, providers, finding))
            {
                if (trials >= MostTrials)
                {
                    isCapped = true;
                    break;
                }

                if (best is { Trial.IsClean: true } && !proposal.IsAsLikely)
                {
                    break;
                }

                if (
                    Try(proposal.Fix.Edits) is not { } trial
                    || !trial.Gone.Exists(gone => gone.Fingerprint() == finding.Fingerprint())
                    || (best is { } known && trial.Weight > known.Trial.Weight)
                )
                {
                    continue;
                }

                if (best is null || trial.Weight < best.Value.Trial.Weight)
                {
                    best = (proposal, trial);
                    ties.Clear();
                }
                else if (proposal.IsAsLikely)
                {
                    ties.Add(proposal);
                }
            }

            if (best is var (taken, done))
            {
                causes.Add(
                    new Cause
                    {
                        Title = taken.Title,
                        Repair = OnFirst(taken, finding),
                        Alternatives = ties.ConvertAll(tie => OnFirst(tie, finding)).ToValueList(),
                        Findings = Explained(done),
                        Confidence = ties.Count > 0 ? CauseConfidence.Tie : CauseConfidence.Only,
                        Places = finding.Entities,
                    }
                );
                state = done.After;
                return true;
            }
        }

        return false;
    }

    /// <summary>The repair as edits of the show as it stood.</summary>
    private Fix OnFirst(OtherRepair proposal, Finding finding)
    {
        if (ReferenceEquals(state.Show, first.Show))
        {
            return proposal.Fix;
        }

        var print = finding.Fingerprint();
        var then = first.Check.Findings.FirstOrDefault(known => known.Fingerprint() == print) ?? finding;
        var same = OtherRepairs.For(first, providers, then).FirstOrDefault(other => other.Fix.Title == proposal.Fix.Title);
        return same?.Fix ?? Fix.Manual(proposal.Fix.Title, "Mend the causes before this one first, then check again");
    }
}
