using System.Text;
using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Testing;

namespace RoutingRules.Schema.Tests;

/// <summary>Reader and validators agree on every document, but for the differences that <see cref="KnownDifferenceTests"/> lists.</summary>
public sealed class AgreementTests
{
    private const int Documents = 1000;
    private const int Size = 24;
    private const double LeastShareOfBadOnes = 0.3;

    [Fact]
    public void On_shows() =>
        Agree(SchemaKind.Show, ModelArbitraries.Shows().Generator.Sample(Documents / 4, new Rnd(20270612), Size).Select(show => ShowWriter.ToUtf8(show)), 11);

    [Fact]
    public void On_profiles() =>
        Agree(
            SchemaKind.DeviceProfile,
            ModelArbitraries.Profiles().Generator.Sample(Documents / 4, new Rnd(20270612), Size).Select(profile => ProfileWriter.ToUtf8(profile)),
            12
        );

    [Fact]
    public void On_configurations() =>
        Agree(
            SchemaKind.Config,
            ModelArbitraries.Configs().Generator.Sample(Documents / 4, new Rnd(20270612), Size).Select(config => ConfigWriter.ToUtf8(config)),
            13
        );

    [Fact]
    public void On_waivers() =>
        Agree(
            SchemaKind.Waivers,
            ModelArbitraries.Waivers().Generator.Sample(Documents / 4, new Rnd(20270612), Size).Select(WaiverWriter.ToUtf8),
            14,
            "truth as text"
        );

    [Fact]
    public void On_baselines() =>
        Agree(
            SchemaKind.Baseline,
            ModelArbitraries.Baselines().Generator.Sample(Documents / 4, new Rnd(20270612), Size).Select(BaselineWriter.ToUtf8),
            15,
            "truth as text"
        );

    // Documents without truth values or numbers leave some changes without a place: those are named in "without".
    private static void Agree(SchemaKind kind, IEnumerable<byte[]> documents, int seed, params string[] without)
    {
        var random = new Random(seed);
        var done = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var (judged, bad) = (0, 0);
        foreach (var document in documents)
        {
            var good = Encoding.UTF8.GetString(document);
            Assert.True(Verdict(kind, good), good);
            for (var i = 0; i < 4; i++)
            {
                judged++;
                bad += Verdict(kind, Mutations.Apply(good, random, done)) ? 0 : 1;
            }
        }

        Assert.InRange(judged, Documents, int.MaxValue);
        Assert.InRange((double)bad / judged, LeastShareOfBadOnes, 0.99);
        Assert.Equal(Mutations.All.Select(mutation => mutation.Name).Except(without).Order(StringComparer.Ordinal), done.Keys);
    }

    /// <summary>The common verdict; fails when there is none.</summary>
    private static bool Verdict(SchemaKind kind, string text)
    {
        var verdicts = (Oracles.Reader(kind, text), Oracles.First(kind, text), Oracles.Second(kind, text));
        Assert.True(
            verdicts is (true, true, true) or (false, false, false),
            $"reader, NJsonSchema, JsonSchema.Net: {verdicts}\n{string.Join("\n", SchemaValidator.Validate(kind, Encoding.UTF8.GetBytes(text)))}\n{text}"
        );
        return verdicts.Item1;
    }
}
