using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Words;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking;

/// <summary>Runs rules over a resolved show, one subject at a time. A rule that fails or overspends is undecided for that subject; the run goes on.</summary>
internal sealed class RuleRunner
{
    /// <summary>Units of work a rule may use on one subject, unless set otherwise.</summary>
    public const long DefaultBudget = 50_000_000;

    private readonly ResolvedShow show;
    private readonly long budget;
    private readonly CancellationToken cancellation;
    private readonly List<Finding> findings = [];
    private readonly List<UndecidedSubject> undecided = [];
    private readonly WorkMeter meter = new();
    private readonly ResolvedShow[] whole;
    private RuleContext? context;
    private OutputSubject[]? outputs;
    private List<DoubtfulWord>? words;

    private RuleRunner(ResolvedShow show, long budget, CancellationToken cancellation)
    {
        this.show = show;
        whole = [show];
        this.budget = budget;
        this.cancellation = cancellation;
    }

    /// <summary>Runs the rules.</summary>
    /// <param name="show">The show.</param>
    /// <param name="rules">The rules as configured, by rule id.</param>
    /// <param name="budget">Units of work for each rule and subject.</param>
    /// <param name="cancellation">Stops between subjects.</param>
    /// <param name="observer">Told when each rule starts and ends; null for nobody.</param>
    /// <param name="words">The doubtful words of the show; null when nobody has looked for them yet.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static CheckResult Run(
        ResolvedShow show,
        IReadOnlyList<ActiveRule> rules,
        long budget,
        CancellationToken cancellation,
        RuleObserver? observer = null,
        List<DoubtfulWord>? words = null
    )
    {
        var runner = new RuleRunner(show, budget, cancellation);
        var outcomes = new RuleOutcome[rules.Count];
        runner.words = words;
        for (var i = 0; i < outcomes.Length; i++)
        {
            observer?.Started(rules[i].Rule.Descriptor);
            outcomes[i] = runner.RunRule(rules[i]);
            observer?.Ended(outcomes[i]);
        }

        FindingIdentity.MakeDistinct(runner.findings);
        runner.findings.Sort(FindingOrder.Instance);
        return new CheckResult
        {
            Findings = runner.findings.ToValueList(),
            Rules = ValueList.Adopt(outcomes),
            Undecided = runner.undecided.ToValueList(),
            WasRead = true,
        };
    }

    private RuleOutcome RunRule(ActiveRule active)
    {
        var rule = active.Rule;
        meter.Reset();
        context ??= Context(active);
        context.NextRule(rule.Descriptor, active.Severity, active.Options);
        var foundBefore = findings.Count;
        var undecidedBefore = undecided.Count;
        var subjects = rule switch
        {
            Rule<ResolvedShow> typed => Each(typed, context, whole, static subject => subject.Document.Title, 0),
            Rule<DeviceNode> typed => Each(typed, context, show.Devices, static subject => $"device {subject.Id}"),
            Rule<FeedNode> typed => Each(typed, context, show.Feeds, static subject => $"feed {subject.Model.Id}"),
            Rule<LineNode> typed => Each(typed, context, show.Lines, static subject => $"line {subject.Model.Id}"),
            Rule<StreamNode> typed => Each(typed, context, show.Streams, static subject => $"stream {subject.Model.Id}"),
            Rule<RouteNode> typed => Each(typed, context, show.Routes, static subject => $"route to {subject.Model.To}"),
            Rule<CableNode> typed => Each(typed, context, show.Cables, static subject => $"cable from {subject.Model.From}"),
            Rule<LinkNode> typed => Each(typed, context, show.Links, static subject => $"link {subject.Model.Id}"),
            Rule<OutputSubject> typed => Each(typed, context, outputs ??= Outputs(), subject => $"output {show.Graph.Address(subject.Point)}"),
            _ => Unknown(rule),
        };
        return new RuleOutcome
        {
            Descriptor = rule.Descriptor,
            Subjects = subjects,
            WorkUnits = meter.Total,
            Status =
                findings.Count > foundBefore ? RuleStatus.Found
                : undecided.Count > undecidedBefore ? RuleStatus.Undecided
                : subjects == 0 ? RuleStatus.NotApplicable
                : RuleStatus.Passed,
        };
    }

    private RuleContext Context(ActiveRule first)
    {
        var made = new RuleContext(show, first.Rule.Descriptor, first.Severity, first.Options, meter, findings);
        if (words is not null)
        {
            made.Share(words);
        }

        return made;
    }

    private int Each<TSubject>(Rule<TSubject> rule, RuleContext context, IReadOnlyList<TSubject> subjects, Func<TSubject, string> name, int usual = 1)
    {
        var looked = 0;
        for (var i = 0; i < subjects.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            context.NextSubject();
            meter.Start(budget);
            string? reason = null;
            var isFault = false;
            try
            {
                meter.Add(1);
                rule.Check(context, subjects[i]);
                reason = context.Undecided;
            }
            catch (WorkBudgetException)
            {
                reason = $"The rule used up its budget of {budget} units of work.";
            }
            catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
            {
                reason = $"The rule failed: {fault.GetType().Name}: {fault.Message}";
                isFault = true;
            }

            looked += context.Looked ?? usual;
            if (reason is not null)
            {
                undecided.Add(
                    new UndecidedSubject
                    {
                        Rule = rule.Descriptor.Id,
                        Subject = name(subjects[i]),
                        Reason = reason,
                        IsFault = isFault,
                    }
                );
            }
        }

        return looked;
    }

    private int Unknown(Rule rule)
    {
        undecided.Add(
            new UndecidedSubject
            {
                Rule = rule.Descriptor.Id,
                Subject = show.Document.Title,
                Reason = $"The engine has no subjects of type {rule.SubjectType.Name}.",
                IsFault = true,
            }
        );
        return 0;
    }

    private OutputSubject[] Outputs()
    {
        var count = 0;
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Type.Groups)
            {
                count += group.Kind == PortKind.Output ? group.Count : 0;
            }
        }

        var found = new OutputSubject[count];
        count = 0;
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Type.Groups)
            {
                for (var i = 0; group.Kind == PortKind.Output && i < group.Count; i++)
                {
                    found[count++] = new OutputSubject(device, group, device.First(group) + i);
                }
            }
        }

        return found;
    }
}
