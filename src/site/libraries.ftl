<#-- Writes src/site/markdown/libraries.md: mvn license:add-third-party -->
# Libraries

[Home](index.md) · how they are kept: [Dependencies](dependencies.md)

A Maven plugin writes this page. These libraries are inside the jar that runs alone and inside the app.

| library | version | licence |
| --- | --- | --- |
<#list dependencyMap as entry>
<#assign project = entry.getKey()/>
| [${project.groupId}:${project.artifactId}](${project.url!"-"}) | ${project.version} | ${entry.getValue()?join(", ")} |
</#list>
