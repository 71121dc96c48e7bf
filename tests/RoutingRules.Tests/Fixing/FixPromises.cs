using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules;
using RoutingRules.Tests.Promises;
using JsonNode = System.Text.Json.Nodes.JsonNode;

namespace RoutingRules.Tests.Fixing;

/// <summary>What every fix keeps, on shows full of mistakes.</summary>
public sealed class FixPromises
{
    private const int Cases = 150;

    /// <summary>
    /// Shows that a document can hold, a feed without any destination is none, with labels, input settings and phantom needs thrown in.
    /// </summary>
    private static Arbitrary<Show> Faulty
    {
        get
        {
            var address =
                from device in Gen.Elements("desk", "a", "b", "box", "free")
                from @group in Gen.Elements("in", "out", "aux", "channel")
                from first in Gen.Choose(1, 7)
                from width in Gen.Choose(1, 2)
                select SmallShow.At($"{device}/{@group}/{first}-{first + width - 1}");
            var label =
                from at in address
                from text in Gen.Elements("Kick", "SNARE", "Overhead left", "Overhead right")
                select new PointLabel { At = at, Text = text };
            var input =
                from device in Gen.Elements("a", "box", "free")
                from first in Gen.Choose(1, 7)
                from width in Gen.Choose(1, 2)
                from phantom in Gen.Elements<bool?>(true, false, null)
                from owner in Gen.Elements("desk", "mid", null)
                select new InputSettings
                {
                    At = SmallShow.At($"{device}/in/{first}-{first + width - 1}"),
                    Phantom = phantom,
                    GainOwner = owner is null ? null : new Id<Device>(owner),
                };
            var shows =
                from show in Gen.OneOf(MessyShows.Shows().Generator.Select(messy => messy.Show), RoughShows.Shows().Generator)
                from labelCount in Gen.Choose(0, 5)
                from labels in label.ArrayOf(labelCount)
                from inputCount in Gen.Choose(0, 4)
                from inputs in input.ArrayOf(inputCount)
                from need in Gen.Elements(PhantomNeed.Either, PhantomNeed.Required, PhantomNeed.Forbidden)
                select show with
                {
                    Feeds = show.Feeds.Where(feed => !feed.To.IsEmpty).ToValueList(),
                    Lines = show.Lines.Select(line => line with { Phantom = need }).ToValueList(),
                    Patch = show.Patch with { Labels = labels.ToValueList(), Inputs = inputs.ToValueList() },
                };
            return shows.ToArbitrary();
        }
    }

    [Fact]
    public void The_shows_try_many_providers()
    {
        var taken = new SortedSet<string>(StringComparer.Ordinal);
        var safe = 0;
        foreach (var show in Faulty.Generator.Sample(100, new Rnd(20270612), Cases))
        {
            var applied = Promise.Engine.Fix(show, new FixOptions { IncludeUnsafe = true }).Applied;
            taken.UnionWith(applied.Select(fix => fix.Finding.Rule));
            safe += applied.Count(fix => fix.Fix.Safety == FixSafety.Safe);
        }

        Assert.True(taken.Count >= 12, $"only {string.Join(", ", taken)}");
        Assert.True(safe >= Cases / 2, $"only {safe} safe fixes");
    }

    [Property(MaxTest = Cases)]
    public Property A_safe_fix_takes_its_finding_away_brings_none_and_leaves_every_sink_what_it_carries() =>
        Promise.Of(
            Faulty,
            show =>
            {
                var result = Promise.Engine.Fix(show);
                if (Promise.Engine.Check(result.Show).Findings.FirstOrDefault(finding => IsNew(finding, result.Before.Findings)) is { } added)
                {
                    return $"brought {added.Rule} {added.Message}";
                }

                var after = Fingerprints(result.After.Findings);
                var old = Carried(show);
                return result.Applied.FirstOrDefault(applied => after.Contains(applied.Finding.Fingerprint())) is { } kept
                        ? $"still there: {kept.Finding.Message}"
                    : result.Applied.Any(applied => applied.Fix.Safety != FixSafety.Safe) ? "took an unsafe fix"
                    : Carried(result.Show).SequenceEqual(old) ? null
                    : "a sink carries something else";
            }
        );

    [Property(MaxTest = Cases)]
    public Property Mending_twice_is_mending_once() =>
        Promise.Of(
            Faulty,
            show =>
            {
                var safe = Promise.Engine.Fix(show).Show;
                var any = Promise.Engine.Fix(show, new FixOptions { IncludeUnsafe = true }).Show;
                return Promise.Engine.Fix(safe) is { Applied.IsEmpty: false } again ? $"safe again: {again.Applied[0].Fix.Title}"
                    : Promise.Engine.Fix(any, new FixOptions { IncludeUnsafe = true }) is { Applied.IsEmpty: false } more && !more.Show.Equals(any)
                        ? $"unsafe again: {more.Applied[0].Fix.Title}"
                    : null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property An_unsafe_fix_brings_no_error_and_says_which_sinks_it_moves() =>
        Promise.Of(
            Faulty,
            show =>
            {
                var result = Promise.Engine.Fix(show, new FixOptions { IncludeUnsafe = true });
                var errors = result.Before.Findings.Where(finding => finding.Severity == RoutingRules.Rules.Severity.Error).ToList();
                if (
                    result.After.Findings.FirstOrDefault(finding => finding.Severity == RoutingRules.Rules.Severity.Error && IsNew(finding, errors)) is
                    { } added
                )
                {
                    return $"brought {added.Rule} {added.Message}";
                }

                var old = Carried(show).ToDictionary(entry => entry.At, entry => entry.Source, StringComparer.Ordinal);
                var told = result.Applied.SelectMany(applied => applied.Moves).Select(move => move.At.ToString()).ToHashSet(StringComparer.Ordinal);
                return Carried(result.Show).FirstOrDefault(entry => old[entry.At] != entry.Source && !told.Contains(entry.At)) is { At: not null } moved
                    ? $"{moved.At} moved and nobody said so"
                    : null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property Patch_text_and_model_say_the_same_and_the_rest_of_the_text_stays() =>
        Promise.Of(
            Faulty,
            show =>
            {
                var text = ShowWriter.ToUtf8(show);
                if (!show.Equals(ShowReader.Read(text).Value))
                {
                    return "no document holds this show";
                }

                var result = Promise.Engine.Fix(show, new FixOptions { IncludeUnsafe = true });
                var edited = ShowText.Edit(text, result.Edits, result.Show);
                if (edited.IsRewritten)
                {
                    return "rewritten";
                }

                var patched = edited.Patch!.Apply(JsonNode.Parse(text));
                var read = ShowReader.Read(System.Text.Encoding.UTF8.GetBytes(patched!.ToJsonString())).Value;
                return !result.Show.Equals(read) ? "the patch gives another show"
                    : !result.Show.Equals(ShowReader.Read(edited.Utf8.Span).Value) ? "the text gives another show"
                    : result.Edits.IsEmpty && !edited.Utf8.Span.SequenceEqual(text) ? "the text changed without an edit"
                    : StartOf(text) != StartOf(edited.Utf8.Span) ? "the text before the patch changed"
                    : null;
            }
        );

    /// <summary>Fixes touch the patch only here, which stands last.</summary>
    private static string StartOf(ReadOnlySpan<byte> text)
    {
        var whole = System.Text.Encoding.UTF8.GetString(text);
        var at = whole.IndexOf("\n  \"patch\"", StringComparison.Ordinal);
        return at < 0 ? whole.TrimEnd('}', '\n') : whole[..at].TrimEnd(',');
    }

    /// <summary>
    /// True when a finding speaks of a thing or a point of which no single finding of its rule spoke before: what is left of a finding is not new.
    /// </summary>
    private static bool IsNew(RoutingRules.Rules.Finding finding, IEnumerable<RoutingRules.Rules.Finding> before) =>
        !before.Any(old => old.Rule == finding.Rule && Things(old).IsSupersetOf(Things(finding)));

    private static HashSet<string> Things(RoutingRules.Rules.Finding finding) =>
        finding
            .Entities.SelectMany(entity =>
                PointRange.TryParse(entity.Id, out var run, out _)
                    ? Enumerable.Range(0, run.Width).Select(position => $"{entity.Role} {run[position]}")
                    : [$"{entity.Role} {entity.Id}"]
            )
            .ToHashSet(StringComparer.Ordinal);

    private static HashSet<string> Fingerprints(ValueList<RoutingRules.Rules.Finding> findings) =>
        findings.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal);

    private static List<(string At, string Source)> Carried(Show show)
    {
        var resolved = Promise.Resolve(show);
        var carried = new List<(string At, string Source)>();
        for (var i = 0; i < resolved.Graph.PointCount; i++)
        {
            var point = new RoutingRules.Resolving.PointIndex(i);
            if (resolved.Graph.GroupOf(point).Kind is RoutingRules.Profiles.PortKind.Output or RoutingRules.Profiles.PortKind.Sink)
            {
                var source = resolved.Graph.Origin(point);
                carried.Add((resolved.Graph.Address(point).ToString(), source.IsNone ? "" : resolved.Graph.Address(source).ToString()));
            }
        }

        return carried;
    }
}
