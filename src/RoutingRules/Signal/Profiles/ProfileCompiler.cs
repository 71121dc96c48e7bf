using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal.Profiles;

/// <summary>Lays a profile out for graphs and names what it says that cannot be.</summary>
internal static class ProfileCompiler
{
    /// <summary>The sample rate taken when a rig says nothing, in hertz.</summary>
    public const int DefaultSampleRate = 48_000;

    /// <summary>The most points one device may have.</summary>
    public const int MaxPoints = 1_000_000;

    public static CompiledProfile Compile(DeviceProfile profile, int sampleRate)
    {
        var problems = new List<ProfileProblem>();
        var groups = Groups(profile, sampleRate, problems, out var pointCount);
        var layout = new ProfileLayout(profile, groups, pointCount, problems);
        layout.AddRouting();
        layout.AddThrough();
        layout.AddFactoryRoutes();
        layout.CheckDetails();
        return layout.Build();
    }

    private static GroupNode[] Groups(DeviceProfile profile, int sampleRate, List<ProfileProblem> problems, out int pointCount)
    {
        var groups = new GroupNode[profile.PortGroups.Count];
        long offset = 0;
        for (var i = 0; i < groups.Length; i++)
        {
            var model = profile.PortGroups[i];
            for (var other = 0; other < i; other++)
            {
                if (groups[other].Id == model.Id)
                {
                    problems.Add(
                        new ProfileProblem
                        {
                            Pointer = $"/portGroups/{i}/id",
                            Message = $"Port group '{model.Id}' is listed twice; give the second one another id.",
                        }
                    );
                }
            }

            var count = model.Count ?? CountAt(model, sampleRate);
            if (offset + count > MaxPoints)
            {
                problems.Add(
                    new ProfileProblem
                    {
                        Pointer = $"/portGroups/{i}",
                        Message = $"The profile has more than {MaxPoints} points; port group '{model.Id}' is taken as empty.",
                    }
                );
                count = 0;
            }

            groups[i] = new GroupNode(model, i, (int)offset, count) { IsOrigin = model.Kind is PortKind.Source or PortKind.Input };
            offset += count;
        }

        pointCount = (int)offset;
        return groups;
    }

    /// <summary>The count at the wanted rate, else at the nearest lower listed rate, else at the lowest.</summary>
    private static int CountAt(PortGroup group, int sampleRate)
    {
        RateCount? best = null;
        foreach (var entry in group.CountByRate)
        {
            if (
                best is null
                || (
                    entry.SampleRate <= sampleRate
                        ? best.SampleRate > sampleRate || entry.SampleRate > best.SampleRate
                        : best.SampleRate > sampleRate && entry.SampleRate < best.SampleRate
                )
            )
            {
                best = entry;
            }
        }

        return best?.Count ?? 0;
    }
}
