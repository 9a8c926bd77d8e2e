using System.Text.RegularExpressions;
using Snapshooter;
using Snapshooter.Xunit;

namespace RailRules.Review.Tests;

/// <summary>
/// Texts as they were last looked at, in __snapshots__. After a change that is meant: delete the folder, run these tests, read the difference, commit it.
/// </summary>
internal static partial class Snapshots
{
    public static void Match(string text, string name) =>
        Snapshot.Match(Hash().Replace(text, new string('0', 64)), new SnapshotFullName(name + ".snap", Path.Combine(Repository.Root, "tests", "RailRules.Review.Tests")));

    /// <summary>The fingerprint of the inputs, which each comment in a sample changes.</summary>
    [GeneratedRegex("\\b[0-9a-f]{64}\\b")]
    private static partial Regex Hash();
}
