using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Tests.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Verification;

/// <summary>An input with a result that breaks no rule, to be broken by tests.</summary>
public sealed record Scene
{
    public required Show Show { get; init; }

    public required Show Result { get; init; }

    public ValueList<Placement> Placements { get; init; }

    public ValueList<UnplacedDemand> Unplaced { get; init; }

    public ValueList<string> Contradiction { get; init; }

    public AssignmentOptions Options { get; init; } = new();

    /// <summary>The scene of an instance solved on paper, by its number.</summary>
    public static Scene Paper(int number)
    {
        var solved = HandSolvedCases.Load(HandSolvedCases.Names[number - 1]);
        return new Scene
        {
            Show = solved.Show,
            Result = solved.Result,
            Placements = solved.Placements,
            Unplaced = solved.Unplaced,
            Contradiction = solved.Contradiction,
            Options = solved.Options,
        };
    }

    /// <summary>The same scene with another document, in which nothing but the patch differs between input and result.</summary>
    public Scene With(Func<Show, Show> change) => this with { Show = change(Show), Result = change(Show) with { Patch = Result.Patch } };

    public Scene WithRig(Func<Rig, Rig> change) => With(show => show with { Rig = change(show.Rig) });

    public Scene WithFeed(string id, Func<Feed, Feed> change) =>
        With(show => show with { Feeds = show.Feeds.Select(feed => feed.Id.Value == id ? change(feed) : feed).ToValueList() });

    public Scene WithPatch(Func<Patch, Patch> change) => this with { Result = Result with { Patch = change(Result.Patch) } };

    public Scene WithRoutes(params Route[] routes) => WithPatch(patch => patch with { Routes = [.. patch.Routes, .. routes] });

    public Scene WithStreams(params AudioStream[] streams) => WithPatch(patch => patch with { Streams = streams.ToValueList() });

    public Scene WithStream(string id, Func<AudioStream, AudioStream?> change) =>
        WithPatch(patch =>
            patch with
            {
                Streams = patch.Streams.Select(stream => stream.Id.Value == id ? change(stream) : stream).OfType<AudioStream>().ToValueList(),
            }
        );

    /// <summary>Places a demand, anew or elsewhere.</summary>
    public Scene Place(string demand, string at)
    {
        var placement = new Placement { Demand = demand, At = PointRange.Parse(at) };
        return this with
        {
            Placements = Placements.Any(old => old.Demand == demand)
                ? Placements.Select(old => old.Demand == demand ? placement : old).ToValueList()
                : [.. Placements, placement],
            Unplaced = Unplaced.Where(old => old.Demand != demand).ToValueList(),
        };
    }

    /// <summary>Takes a demand out and says so.</summary>
    public Scene LeaveOut(string demand) =>
        this with
        {
            Placements = Placements.Where(old => old.Demand != demand).ToValueList(),
            Unplaced = [.. Unplaced, new UnplacedDemand { Demand = demand, Reason = "Left out." }],
        };

    public VerificationResult Verify() => AssignmentVerifier.Verify(Show, Result, Placements, Unplaced, Options, _ => null, Contradiction);

    /// <summary>Asserts that nothing is wrong, so that what a test breaks afterwards is what it breaks.</summary>
    public Scene IsValid()
    {
        Assert.Equal([], Verify().Problems);
        return this;
    }

    /// <summary>Asserts that the verifier says something.</summary>
    public void Complains(string about)
    {
        var problems = Verify().Problems;
        Assert.True(problems.Any(problem => problem.Contains(about, StringComparison.Ordinal)), $"Expected '{about}' among: {string.Join(" | ", problems)}");
    }

    /// <summary>Asserts that the verifier says one thing and no other.</summary>
    public void ComplainsOnly(string about) => Assert.Equal([about], Verify().Problems);
}
