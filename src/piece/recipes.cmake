# The shipped recipes compiled into the program: every .fleck file of src/piece/recipes becomes a text of recipes.cpp.
# Included from src/CMakeLists.txt after the piece room is declared. The texts are written into a generated source, which
# is made anew when one of them changes.

set(recipes_here ${CMAKE_CURRENT_LIST_DIR}/recipes)
file(GLOB recipes_files CONFIGURE_DEPENDS ${recipes_here}/*.fleck)
list(SORT recipes_files)
set(RECIPES_TEXTS "")
foreach(file ${recipes_files})
  get_filename_component(name ${file} NAME)
  file(READ ${file} text)
  string(APPEND RECIPES_TEXTS "        {\"${name}\", R\"fleck(${text})fleck\"},\n")
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
endforeach()
configure_file(${CMAKE_CURRENT_LIST_DIR}/recipes.cpp.in ${CMAKE_BINARY_DIR}/recipes/recipes.cpp @ONLY)
target_sources(piece PRIVATE ${CMAKE_BINARY_DIR}/recipes/recipes.cpp)
