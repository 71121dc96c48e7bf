using System.Text;
using RoutingRules.Cli.Tests.Rig;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary><c>check</c> with profiles from folders.</summary>
public sealed class CheckProfilesTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_profile_folder_wins_over_the_generic_profiles()
    {
        Assert.True(new Profiles.Generic.GenericProfiles().TryFind(new("generic/amplifier-4"), out var json));
        folder.Write(
            "profiles/mine.profile.json",
            Encoding.UTF8.GetString(json.Span).Replace("Amplifier, 4 channels", "My amplifier", StringComparison.Ordinal)
        );

        Assert.Contains("My amplifier", Tool.Run("profiles", "generic/amplifier-4", "--profiles", folder.At("profiles")).Civil().Out, StringComparison.Ordinal);
        Assert.DoesNotContain("My amplifier", Tool.Run("profiles", "generic/amplifier-4").Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_profile_folder_leaves_the_profiles_it_does_not_hold_readable()
    {
        var show = folder.Write("a.show.json", Clean);
        folder.Write("empty/readme.txt", "No profile here.");
        folder.Write(
            "other/mine.profile.json",
            """{ "id": "mine/box", "version": 1, "kind": "stage-box", "name": "Mine", "portGroups": [ { "id": "in", "kind": "input", "count": 1 } ] }"""
        );

        Assert.Equal(0, Tool.Run("check", show, "--profiles", folder.At("empty")).Civil().Code);
        Assert.Equal(0, Tool.Run("check", show, "--profiles", folder.At("other"), "--profiles", folder.At("empty")).Civil().Code);
    }

    [Fact]
    public void A_broken_profile_in_a_folder_is_named()
    {
        var path = folder.Write("profiles/bad.profile.json", "{ \"id\": 3 }");
        var result = Tool.Run("check", folder.Write("a.show.json", Clean), "--profiles", folder.At("profiles")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains(path, result.Error, StringComparison.Ordinal);
    }

    /// <summary>One amplifier and nothing else.</summary>
    private const string Clean = """{ "schemaVersion": 1, "title": "T", "rig": { "devices": [ { "id": "x", "profile": "generic/amplifier-4" } ] } }""";
}
