using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Planning;

namespace RoutingRules.Tests.Promises;

/// <summary>
/// At no step of a changeover does a line that must not get phantom power stand where it is or may be on; a plug moves only where it is off, and all that
/// hears it is muted.
/// </summary>
[Trait("Speed", "slow")]
public sealed class PhantomPromises
{
    [Property(MaxTest = Promise.Cases / 2)]
    public Property On_a_stage_with_splits_and_two_consoles() => Promise.Of(PhantomStage.Pairs(), pair => pair.After, Broken);

    [Property(MaxTest = Promise.Cases / 10)]
    public Property Between_any_two_acts_on_one_rig() =>
        Promise.Of(ShowPair.OneRig(), pair => pair.After, pair => Broken(new ShowPair(Unnamed(pair.Before), Turned(Unnamed(pair.After)))));

    [Property(MaxTest = Promise.Cases / 40)]
    public Property In_running_orders() =>
        Promise.Of(
            PhantomStage.Runs(),
            run => new Show { Title = "", Rig = run.Rig },
            run =>
            {
                var plan = Promise.Engine.PlanRun(run);
                return plan
                    .Changeovers.Select((changeover, i) => PhantomSimulation.Broken(plan.Acts[i].Show, plan.Acts[i + 1].Show, changeover.Plan))
                    .FirstOrDefault(problem => problem is not null);
            }
        );

    private static string? Broken(ShowPair pair) => PhantomSimulation.Broken(pair.Before, pair.After, Promise.Engine.PlanChangeover(pair.Before, pair.After));

    private static Show Unnamed(Show show) => show with { Lines = show.Lines.Select(line => line with { Name = null }).ToValueList() };

    /// <summary>The lines come out of one another's inputs and need what another needed; nothing is said about inputs.</summary>
    private static Show Turned(Show show) =>
        show with
        {
            Lines = show.Lines.Select((line, i) => line with { Phantom = show.Lines[(i + 1) % show.Lines.Count].Phantom }).ToValueList(),
            Patch = show.Patch with { Inputs = [] },
        };
}
